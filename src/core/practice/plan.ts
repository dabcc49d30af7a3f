import { uniqueMusic } from '../song/form.ts';
import { timelineOf } from '../song/timeline.ts';
import type { Bpm } from '../time/tempoMap.ts';
import { type SongToPractise, type Topic, topicsOf } from './planTopics.ts';
import type { TakeRecord } from './takeRecord.ts';

/** One line of a plan. A drill climbs from `startBpm` to `goalBpm` as far as its minutes allow. */
export type PlanItem =
  | (Topic & { readonly kind: 'drill'; readonly minutes: number })
  | { readonly kind: 'run-through'; readonly minutes: number; readonly bpm: Bpm }
  | { readonly kind: 'rest'; readonly minutes: number };

/** Short blocks that change (Carter & Grahn 2016: three minutes each); the last one takes what would be too short alone. */
const BLOCK_MINUTES = { usual: 3, least: 2 } as const;

/** A breath after so many minutes, and five minutes of rest after 25 of playing (docs/sources.md#rests). */
const RESTS = { breathAfter: 9, breath: 1, restAfter: 24, rest: 5 } as const;

/** The song is played through at the end if that takes no more than this share of the time. */
const RUN_THROUGH_SHARE = 1 / 3;

/**
 * An order of short drills for the minutes there are: the weakest steps of each pattern's last take,
 * the hardest joins and the patterns and sections that were not yet clean at the song's tempo, in
 * turn, with rests between and the song at the end if there is time for it. Once all is at tempo,
 * what is hardest is kept in hand. The minutes add up to `minutes`; of a song without form nothing
 * is planned, nor for less than a minute.
 */
export function planFor(
  minutes: number,
  toPractise: SongToPractise,
  history: readonly TakeRecord[],
): PlanItem[] {
  const { song } = toPractise;
  if (minutes < 1 || timelineOf(song).bars.length === 0) return [];
  const wholeMinutes = uniqueMusic(song).whole.seconds / 60;
  const throughMinutes = Math.ceil(2 * wholeMinutes) / 2;
  const withRunThrough = throughMinutes <= RUN_THROUGH_SHARE * minutes;
  const drills = drillsAndRests(
    withRunThrough ? minutes - throughMinutes : minutes,
    topicsOf(toPractise, history),
  );
  return withRunThrough
    ? [
        ...withBreathAtEnd(drills),
        { kind: 'run-through', minutes: throughMinutes, bpm: song.tempo.bpm },
      ]
    : drills;
}

/** The lines with a breath behind them, taken from the last drill, where one is due before the song is played. */
function withBreathAtEnd(items: readonly PlanItem[]): readonly PlanItem[] {
  const since = items.slice(items.findLastIndex(({ kind }) => kind === 'rest') + 1);
  const playedMinutes = since.reduce((sum, { minutes }) => sum + minutes, 0);
  const [before, last] = since.slice(-2);
  if (playedMinutes < RESTS.breathAfter || !before || !last) return items;
  const left = last.minutes - RESTS.breath;
  const blocks =
    left >= BLOCK_MINUTES.least
      ? [before, { ...last, minutes: left }]
      : [{ ...before, minutes: before.minutes + left }];
  return [...items.slice(0, -2), ...blocks, { kind: 'rest', minutes: RESTS.breath }];
}

function drillsAndRests(minutes: number, topics: readonly Topic[]): PlanItem[] {
  const items: PlanItem[] = [];
  let [left, sinceBreath, sinceRest] = [minutes, 0, 0];
  for (let next = 0; left > 0; next++) {
    const rest = restDue(sinceBreath, sinceRest, left);
    if (rest > 0) {
      items.push({ kind: 'rest', minutes: rest });
      sinceBreath = 0;
      sinceRest = rest === RESTS.rest ? 0 : sinceRest;
    }
    const room = left - rest;
    const isLast = room - BLOCK_MINUTES.usual < BLOCK_MINUTES.least;
    const block = isLast ? room : BLOCK_MINUTES.usual;
    items.push({ kind: 'drill', minutes: block, ...topics[next % topics.length]! });
    left = room - block;
    sinceBreath += block;
    sinceRest += block;
  }
  return items;
}

/** How long to rest before the next block, which must still fit; 0 for not at all. */
function restDue(sinceBreath: number, sinceRest: number, left: number): number {
  if (sinceRest >= RESTS.restAfter && left >= RESTS.rest + BLOCK_MINUTES.least) return RESTS.rest;
  if (sinceBreath >= RESTS.breathAfter && left >= RESTS.breath + BLOCK_MINUTES.least)
    return RESTS.breath;
  return 0;
}
