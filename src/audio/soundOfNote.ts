import type { KeyNumber } from '../core/harmony/pitch.ts';
import { DRUM_KEYS } from '../core/rhythm/drumVoices.ts';
import type { Part, TimedNote } from '../core/rhythm/note.ts';
import type { Seconds } from '../core/time/ticks.ts';
import { clickOfKey } from './clickSounds.ts';
import { COUNT_WORDS } from './countWords.ts';
import { damperSec, PIANO_ZONES, pianoFile, pianoLayer } from './pianoSamples.ts';
import { type SoundId, SYNTH_ZONES } from './soundCatalogue.ts';
import { KIT } from './synth/drumSounds.ts';

/** What the mix sets together: each hand, the band, the click. */
export const BUSES = ['left', 'right', 'band', 'click'] as const;

export type Bus = (typeof BUSES)[number];

/**
 * How a note is struck: which stored sound, how much faster than stored (1 = as stored), how loud
 * (1 = as stored, velocity 127), into which bus. `dampSec` is the time in which the sound falls to
 * 1/e once the note ends; without it the sound rings out whatever the note's length. A strike in a
 * `dampGroup` ends what was struck in it before: a string that is plucked again, a hi-hat that closes.
 */
export type SoundOfNote = {
  readonly id: SoundId;
  readonly bus: Bus;
  readonly playbackRate: number;
  readonly gain: number;
  readonly dampSec?: Seconds;
  readonly dampGroup?: string;
};

type Struck = Omit<SoundOfNote, 'bus' | 'gain'>;

type Strike = Pick<TimedNote, 'part' | 'keyNumber' | 'velocity' | 'says'>;

const BUS_OF: Readonly<Partial<Record<Part, Bus>>> = {
  left: 'left',
  right: 'right',
  click: 'click',
};

function nearestZone(zones: readonly KeyNumber[], keyNumber: KeyNumber): KeyNumber {
  return zones.reduce((best, zone) =>
    Math.abs(zone - keyNumber) < Math.abs(best - keyNumber) ? zone : best,
  );
}

function rateFrom(zone: KeyNumber, keyNumber: KeyNumber): number {
  return 2 ** ((keyNumber - zone) / 12);
}

function piano({ part, keyNumber, velocity }: Strike): Struck {
  const zone = nearestZone(PIANO_ZONES, keyNumber);
  return {
    id: `piano/${pianoFile(zone, pianoLayer(velocity))}`,
    playbackRate: rateFrom(zone, keyNumber),
    dampSec: damperSec(keyNumber),
    dampGroup: `${part}/${keyNumber}`,
  };
}

function synthesised(name: keyof typeof SYNTH_ZONES, dampSec: Seconds, keyNumber: KeyNumber) {
  const zone = nearestZone(SYNTH_ZONES[name], keyNumber);
  return { id: `${name}/${zone}`, playbackRate: rateFrom(zone, keyNumber), dampSec } as const;
}

function drum({ keyNumber }: Strike): Struck {
  const found = KIT.find((one) => one.keys.includes(keyNumber)) ?? KIT[0]!;
  const struck = { id: `drum/${found.name}`, playbackRate: 1 } as const;
  return DRUM_KEYS['hi-hat'].includes(keyNumber) ? { ...struck, dampGroup: 'hi-hat' } : struck;
}

function plucked({ part, keyNumber }: Strike): Struck {
  return { ...synthesised('plucked', 0.06, keyNumber), dampGroup: `${part}/${keyNumber}` };
}

/** A word, which the next one cuts short, or a click. */
function click({ keyNumber, says }: Strike): Struck {
  const spoken = says === undefined ? undefined : COUNT_WORDS[says - 1];
  return spoken
    ? { id: `count/${spoken.word}`, playbackRate: 1, dampSec: 0.03, dampGroup: 'count' }
    : { id: `click/${clickOfKey(keyNumber)}`, playbackRate: 1 };
}

/** What each part is played on. The bass plays one note at a time, like its player. */
const INSTRUMENT_OF: Readonly<Record<Part, (strike: Strike) => Struck>> = {
  left: piano,
  right: piano,
  click,
  bass: ({ keyNumber }) => ({ ...synthesised('bass', 0.05, keyNumber), dampGroup: 'bass' }),
  picking: plucked,
  strumming: plucked,
  sung: ({ keyNumber }) => synthesised('sung', 0.06, keyNumber),
  kick: drum,
  snare: drum,
  'hi-hat': drum,
  tom: drum,
  cymbal: drum,
  percussion: drum,
};

/** Loudness of a MIDI velocity as a factor: its square, 40 lg(v/127) dB (common practice). */
function velocityGain(velocity: number): number {
  return (Math.min(Math.max(velocity, 1), 127) / 127) ** 2;
}

/**
 * How a note is struck. Key numbers outside an instrument's range are played on its outermost
 * sound, faster or slower; velocities outside 1…127 count as the nearest inside.
 */
export function soundOfNote(note: Strike): SoundOfNote {
  return {
    ...INSTRUMENT_OF[note.part](note),
    bus: BUS_OF[note.part] ?? 'band',
    gain: velocityGain(note.velocity),
  };
}
