import type { HandName } from '../../../core/voicing/voicing.ts';
import { ACCIDENTALS, REST_REACH, SPACE, STAFF_REACH, STEM_LENGTH, type Units } from './glyphs.ts';
import { markSide, marksOf, marksReach } from './marks.ts';
import { beamedRuns, tupletRuns } from './stemDirections.ts';
import type { EngravedBar, WrittenEvent, WrittenVoice } from './writtenBars.ts';

/** How far the ink of a staff reaches from its middle line, at least to its outer lines. */
export type InkReach = { readonly above: Units; readonly below: Units };

const HALF_SPACE = SPACE / 2;
const HEAD_REACH = 6;

/** What a sloping beam may add to the longest stem of its group. */
const BEAM_SLACK = 10;

/** A tuplet's figure and bracket with the distance from what they stand over. */
const TUPLET_ROOM: Units = 22;

/** How far all notes of a bar reach on one staff: heads, stems, beams, accidentals, marks, tuplets, rests. */
export function inkReach({ staves }: EngravedBar, hand: HandName): InkReach {
  const voices = staves[hand];
  const inks = voices.map((voice) => voiceInk(voice, voices.length));
  return {
    above: Math.max(STAFF_REACH, ...inks.map(({ above }) => above)),
    below: Math.max(STAFF_REACH, ...inks.map(({ below }) => below)),
  };
}

function voiceInk(voice: WrittenVoice, voices: number): InkReach {
  const inks = voice.map((written) => eventInk(written, voices));
  for (const run of beamedRuns(voice.map(({ event }) => event)))
    if (run.length > 1) spread(inks, run, voice[run[0]!]!.stem, BEAM_SLACK);
  for (const run of tupletRuns(voice.map(({ event }) => event)))
    spread(inks, run, tupletSide(run.map((i) => voice[i]!)), TUPLET_ROOM);
  return joined(inks);
}

/** The side of a tuplet's figure: that of the stems, of the first note where they differ. */
export function tupletSide(events: readonly WrittenEvent[]): 'up' | 'down' {
  return events.find(({ heads }) => heads.length > 0)?.stem ?? 'up';
}

/** Lets all events of a run reach as far as the farthest of them, and `more`. */
function spread(inks: InkReach[], run: readonly number[], side: 'up' | 'down', more: Units): void {
  const all = joined(run.map((i) => inks[i]!));
  const reached =
    side === 'up'
      ? { above: all.above + more }
      : { below: Math.max(all.below, STAFF_REACH) + more };
  for (const i of run) inks[i] = { ...inks[i]!, ...reached };
}

function joined(inks: readonly InkReach[]): InkReach {
  return {
    above: Math.max(STAFF_REACH, ...inks.map(({ above }) => above)),
    below: Math.max(STAFF_REACH, ...inks.map(({ below }) => below)),
  };
}

function eventInk(written: WrittenEvent, voices: number): InkReach {
  if (written.heads.length === 0) return restInk(written);
  const { top, bottom } = noteReach(written);
  const signs = written.heads.flatMap(({ place, sign }) =>
    sign === undefined ? [] : [{ y: place * HALF_SPACE, ...ACCIDENTALS[sign]! }],
  );
  const side = markSide(written, voices);
  const edge = side === 'above' ? top : bottom;
  const marks = marksReach(marksOf(written, side, edge), 0);
  return {
    above: Math.max(top, ...signs.map((s) => s.y + s.above), side === 'above' ? marks : top),
    below: Math.max(
      -bottom,
      ...signs.map((s) => s.below - s.y),
      side === 'below' ? marks : -bottom,
    ),
  };
}

/** Highest and lowest point of heads and stem, in units above the middle line. */
function noteReach({ heads, stem, event }: WrittenEvent): {
  readonly top: Units;
  readonly bottom: Units;
} {
  const high = heads.at(-1)!.place * HALF_SPACE;
  const low = heads[0]!.place * HALF_SPACE;
  const length = STEM_LENGTH + (event.written.value >= 32 ? SPACE : 0);
  const hasStem = event.written.value > 1;
  return {
    top: hasStem && stem === 'up' ? Math.max(high + length, 0) : high + HEAD_REACH,
    bottom: hasStem && stem === 'down' ? Math.min(low - length, 0) : low - HEAD_REACH,
  };
}

function restInk({ event, restPlace }: WrittenEvent): InkReach {
  const { above, below } = REST_REACH[event.written.value];
  return {
    above: restPlace * HALF_SPACE + above,
    below: below - restPlace * HALF_SPACE,
  };
}
