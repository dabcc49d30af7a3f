import { useRef } from 'react';
import { barsOfPassage, type Stage } from '../../core/practice/stage.ts';
import { type ChordSpan, chordAt, type Timeline } from '../../core/song/timeline.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { useFrame } from '../kit/useFrame.ts';
import { ChordName } from '../parts/song/ChordName.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject } from '../parts/tool/useProject.ts';
import { barsWithChords } from '../parts/transport/follow.ts';

/** What stands in one place of a passage, and from which tick of what is played on. */
type Place = { readonly fromTick: number; readonly chords: readonly ChordSpan['chord'][] };

/** The places of a stage's passage: bars of the song, the first with the chord that it holds over, or chords in turn; none on one chord. */
function placesOf(timeline: Timeline, { passage }: Stage): readonly Place[] {
  if (passage.kind === 'two-chords')
    return [passage.first, passage.second].map((chord, i) => ({ fromTick: i, chords: [chord] }));
  const bars = barsOfPassage(timeline, passage);
  if (!bars) return [];
  return barsWithChords(timeline, bars).map(({ bar, chords }, i) => {
    const fromTick = timeline.bars[bar]!.startTick;
    const held = i === 0 && chords.length === 0 ? chordAt(timeline, fromTick) : undefined;
    return { fromTick, chords: (held ? [held] : chords).map(({ chord }) => chord) };
  });
}

/** The chords of a stage's passage, bar by bar, the bar that is heard marked. */
export function PassageLine({ stage }: { readonly stage: Stage }) {
  const { playback } = useParts();
  const timeline = useProject(selectTimeline);
  const list = useRef<HTMLOListElement>(null);
  const places = placesOf(timeline, stage);
  const isTurns = stage.passage.kind === 'two-chords';
  useFrame(usePlayback().status === 'playing', () => {
    const heard = playback.position();
    const isDrill = heard?.request.kind === 'drill' && !heard.countingIn;
    const at = isTurns ? (heard?.chord?.slot ?? 0) : (heard?.tick ?? 0);
    const now = isDrill ? places.findLastIndex(({ fromTick }) => fromTick <= at) : -1;
    for (const [i, item] of [...(list.current?.children ?? [])].entries())
      item.classList.toggle('practice-passage-now', i === now);
  });
  if (places.length === 0) return null;
  return (
    <ol
      ref={list}
      className={`practice-passage${places.length > 4 ? ' practice-passage-long' : ''}`}
      aria-label="Chords, bar by bar"
    >
      {places.map(({ fromTick, chords }) => (
        <li key={fromTick}>
          {chords.length === 0
            ? '–'
            : chords.map((chord, i) => <ChordName key={i} chord={chord} />)}
        </li>
      ))}
    </ol>
  );
}
