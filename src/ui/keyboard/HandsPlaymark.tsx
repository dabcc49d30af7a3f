import { type RefObject, useRef } from 'react';
import type { SectionId } from '../../core/ids.ts';
import { useParts } from '../parts.ts';
import { useFrame } from '../useFrame.ts';
import { usePlayback } from '../useProject.ts';

/** Marks the chord that is heard in a list of chords, each with its slot. Draws nothing itself. */
export function HandsPlaymark({
  sectionId,
  list,
}: {
  readonly sectionId: SectionId;
  readonly list: RefObject<HTMLElement | null>;
}) {
  const { playback } = useParts();
  const shown = useRef<number | undefined>(undefined);
  const isRunning = usePlayback().status === 'playing';
  useFrame(isRunning, () => {
    const position = playback.position();
    const isHere = position?.request.kind === 'song' && position.section?.sectionId === sectionId;
    const slot =
      isHere && !position.countingIn && !position.chord?.inEnding
        ? position.chord?.slot
        : undefined;
    if (slot === shown.current) return;
    shown.current = slot;
    for (const chord of list.current?.querySelectorAll('[data-now]') ?? [])
      chord.removeAttribute('data-now');
    if (slot !== undefined)
      list.current?.querySelector(`[data-slot="${slot}"]`)?.setAttribute('data-now', '');
  });
  return null;
}
