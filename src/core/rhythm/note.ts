import type { KeyNumber } from '../harmony/pitch.ts';
import type { Seconds, Ticks } from '../time/ticks.ts';
import type { SourcePart } from './sources.ts';

/** Who sounds a note: one of the hands, the click, or a part of the band. */
export type Part = 'left' | 'right' | 'click' | SourcePart;

/**
 * One sounding note in score time. `velocity` is MIDI's, 1 to 127. Drums and the click take their
 * key numbers from the General MIDI percussion map. `patternTick` is where in its pattern the hit
 * stands that made it (absent for clicks). `writtenTicks` is the length a short (staccato) hit is
 * written with, where it sounds shorter. `says` is the number that a voice speaks in place of a
 * click, its middle on the beat; what has no voice clicks.
 */
export type Note = {
  readonly part: Part;
  readonly keyNumber: KeyNumber;
  readonly startTick: Ticks;
  readonly durationTicks: Ticks;
  readonly velocity: number;
  readonly patternTick?: Ticks;
  readonly writtenTicks?: Ticks;
  readonly says?: number;
};

/** The same note in seconds from the downbeat of bar 1; negative in a count-in. */
export type TimedNote = Omit<Note, 'startTick' | 'durationTicks'> & {
  readonly startSec: Seconds;
  readonly durationSec: Seconds;
};
