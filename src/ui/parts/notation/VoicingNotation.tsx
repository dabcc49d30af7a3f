import { lazy } from 'react';
import type { Section } from '../../../core/song/song.ts';
import type { Voicing } from '../../../core/voicing/voicing.ts';
import { LazySheet } from './LazySheet.tsx';

const VoicingSheet = lazy(async () => ({
  default: (await import('./VoicingSheet.tsx')).VoicingSheet,
}));

/** A section's chords as both hands hold them, as notation; loaded when it is first shown. */
export function VoicingNotation(props: {
  readonly section: Section;
  readonly voicings: readonly Voicing[];
}) {
  return (
    <LazySheet>
      <VoicingSheet {...props} />
    </LazySheet>
  );
}
