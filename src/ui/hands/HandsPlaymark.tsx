import { type RefObject, useRef } from 'react';
import type { PlaybackPosition } from '../../app/playbackPosition.ts';
import { useFrame } from '../kit/useFrame.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback } from '../parts/tool/useProject.ts';
import type { ChordHandsRow } from './ChordHandsList.tsx';

/** The slot of a row of chords that is heard at a position of the song; undefined where none is. */
function slotHeard(
  { request, section, chord }: PlaybackPosition,
  { sectionId, endingOf }: ChordHandsRow['heardIn'],
): number | undefined {
  if (request.kind !== 'song' || section?.sectionId !== sectionId) return undefined;
  const ending = chord?.inEnding && section.formEntryId;
  return ending === endingOf ? chord?.slot : undefined;
}

/** Marks the chord that is heard in a list of chords, each with its slot. Draws nothing itself. */
export function HandsPlaymark({
  heardIn,
  list,
}: {
  readonly heardIn: ChordHandsRow['heardIn'];
  readonly list: RefObject<HTMLElement | null>;
}) {
  const { playback } = useParts();
  const shown = useRef<number | undefined>(undefined);
  const isRunning = usePlayback().status === 'playing';
  useFrame(isRunning, () => {
    const position = playback.position();
    const slot = position && !position.countingIn ? slotHeard(position, heardIn) : undefined;
    if (slot === shown.current) return;
    shown.current = slot;
    for (const chord of list.current?.querySelectorAll('[data-now]') ?? [])
      chord.removeAttribute('data-now');
    if (slot !== undefined)
      list.current?.querySelector(`[data-slot="${slot}"]`)?.setAttribute('data-now', '');
  });
  return null;
}
