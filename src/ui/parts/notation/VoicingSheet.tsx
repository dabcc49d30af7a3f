import { useMemo } from 'react';
import type { Section } from '../../../core/song/song.ts';
import type { Voicing } from '../../../core/voicing/voicing.ts';
import { useProject } from '../tool/useProject.ts';
import { NotationView } from './NotationView.tsx';
import { notatedVoicings } from './notatedVoicings.ts';

/** The hands of a section's chords as whole notes, under the song's key signature. */
export function VoicingSheet({
  section,
  voicings,
}: {
  readonly section: Section;
  readonly voicings: readonly Voicing[];
}) {
  const key = useProject((project) => project.song.key);
  const notation = useMemo(() => notatedVoicings(section, voicings, key), [section, voicings, key]);
  return <NotationView notation={notation} size="flow" />;
}
