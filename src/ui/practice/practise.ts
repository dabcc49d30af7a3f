import type { BarRange } from '../../app/score.ts';
import type { PracticeTarget } from '../../core/practice/takeRecord.ts';
import { unreachable } from '../../core/result.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import type { Bpm } from '../../core/time/tempoMap.ts';
import { setDrillPattern, setLadder } from '../../state/edits/practice.ts';
import { selectTimeline } from '../../state/selectors.ts';
import type { Parts } from '../parts.ts';
import { speedChanged } from '../playingSpeed.ts';
import { entryBars } from '../songMap/marking.ts';

/** The last bar before a place where two sections meet (the timeline's bar `bar` begins the second) and the first after it. */
export function barsOfJoin(bar: number): BarRange {
  return { firstBar: bar - 1, endBar: bar + 1 };
}

/** The bars that a target means where it first comes; undefined for the whole song and for what is not played. */
export function barsOfTarget(timeline: Timeline, target: PracticeTarget): BarRange | undefined {
  const { sections } = timeline;
  switch (target.kind) {
    case 'section': {
      const place = sections.findIndex((span) => span.sectionId === target.sectionId);
      return place < 0 ? undefined : entryBars(timeline, place);
    }
    case 'join': {
      const place = sections.findIndex(
        (span, i) => span.sectionId === target.to && sections[i - 1]?.sectionId === target.from,
      );
      return place < 0 ? undefined : barsOfJoin(entryBars(timeline, place).firstBar);
    }
    case 'bars':
      return { firstBar: target.firstBar, endBar: target.endBar };
    case 'song':
    case 'pattern':
      return undefined;
    default:
      return unreachable(target);
  }
}

/** Plays bars of the song on Play, again and again (the whole song once without), with the speed that the foot shows. */
export function playBars({ playback, view }: Parts, range: BarRange | undefined): void {
  const times = range ? ('until-stopped' as const) : 1;
  view.set({ page: 'play', range, times });
  void playback.play({ kind: 'song', times, ...(range && { range }) });
}

/**
 * Begins to practise a target: a pattern as a drill that climbs from `startBpm` to `goalBpm`, anything
 * else of the song at `startBpm`, to be made faster by hand.
 */
export function practise(
  parts: Parts,
  { target, startBpm, goalBpm }: { target: PracticeTarget; startBpm: Bpm; goalBpm: Bpm },
): void {
  const { store, playback, view } = parts;
  if (target.kind === 'pattern') {
    store.edit(
      (project) => setLadder({ startBpm, goalBpm })(setDrillPattern(target.patternId)(project)),
      { label: 'drill of the plan' },
    );
    view.set({ page: 'drill', rung: 0 });
    void playback.play({ kind: 'drill', rung: 0 });
    return;
  }
  const { song } = store.snapshot();
  view.set(speedChanged(Math.round((100 * startBpm) / song.tempo.bpm), 0));
  playBars(parts, barsOfTarget(selectTimeline(store.snapshot()), target));
}
