import { useRef } from 'react';
import { useFrame } from '../kit/useFrame.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback } from '../parts/tool/useProject.ts';

/** The beats of the bar as counted, 1 to `count`; the one that is heard now stands out. */
export function Beats({ count }: { readonly count: number }) {
  const { playback } = useParts();
  const list = useRef<HTMLOListElement>(null);
  const running = usePlayback().status === 'playing';
  useFrame(running, () => {
    const position = playback.position();
    const beats = list.current?.children ?? [];
    for (let i = 0; i < beats.length; i++)
      beats[i]!.classList.toggle(
        'practice-beat-now',
        position !== undefined && position.beat === i,
      );
    list.current?.classList.toggle('practice-counting-in', position?.countingIn ?? false);
  });
  return (
    <ol className="practice-beats" ref={list} aria-hidden="true">
      {Array.from({ length: count }, (_, i) => (
        <li key={i}>{i + 1}</li>
      ))}
    </ol>
  );
}
