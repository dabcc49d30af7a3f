import type { PatternId } from '../../../core/ids.ts';
import type { Topic } from '../../../core/practice/planTopics.ts';
import type { Passage } from '../../../core/practice/stage.ts';
import { stageThrough } from '../../../core/practice/stageList.ts';
import type { PracticeTarget } from '../../../core/practice/takeRecord.ts';
import { unreachable } from '../../../core/result.ts';
import { setDrillPattern, setLadder } from '../../../state/edits/practice.ts';
import { stageList } from '../../../state/stages.ts';
import type { Parts } from '../tool/parts.ts';
import { speedChanged } from '../tool/playingSpeed.ts';

/** Plays the whole song once on Play, at the speed that is set. */
function playSong({ playback, view }: Parts): void {
  view.set({ page: 'play', range: undefined, times: 1 });
  void playback.play({ kind: 'song', times: 1 });
}

/** What a drill of a target goes through; undefined for what is no drill: the song and any bars of it. */
function passageOf(target: PracticeTarget): Passage | undefined {
  switch (target.kind) {
    case 'pattern':
      return { kind: 'one-chord' };
    case 'section':
    case 'join':
      return target;
    case 'song':
    case 'bars':
      return undefined;
    default:
      return unreachable(target);
  }
}

/** Drills a passage from `startBpm` up to `goalBpm`: at its stage, if it has one in the list. */
export function drillPassage(
  { store, playback, view }: Parts,
  passage: Passage,
  { startBpm, goalBpm }: Pick<Topic, 'startBpm' | 'goalBpm'>,
  patternId?: PatternId,
): void {
  store.edit(
    (project) =>
      setLadder({ startBpm, goalBpm })(patternId ? setDrillPattern(patternId)(project) : project),
    { label: 'tempo ladder' },
  );
  const stage =
    passage.kind === 'one-chord' ? undefined : stageThrough(stageList(store.snapshot()), passage);
  view.set({ page: 'drill', rung: 0, stage });
  void playback.play({ kind: 'drill', rung: 0, ...(stage && { stage }) });
}

/**
 * Begins to practise a target: a pattern, a section or a join as a drill that climbs from `startBpm` to
 * `goalBpm`, the song once at `startBpm`, to be made faster by hand.
 */
export function practise(
  parts: Parts,
  { target, startBpm, goalBpm }: Pick<Topic, 'target' | 'startBpm' | 'goalBpm'>,
): void {
  const passage = passageOf(target);
  if (passage) {
    const patternId = target.kind === 'pattern' ? target.patternId : undefined;
    drillPassage(parts, passage, { startBpm, goalBpm }, patternId);
    return;
  }
  const { song } = parts.store.snapshot();
  parts.view.set(speedChanged(Math.round((100 * startBpm) / song.tempo.bpm), 0));
  playSong(parts);
}
