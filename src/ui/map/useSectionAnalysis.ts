import { useMemo } from 'react';
import { type AnalysedChord, analyse } from '../../core/harmony/analysis.ts';
import { sectionKey } from '../../core/song/sectionKeys.ts';
import type { Section } from '../../core/song/song.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** Every chord of a section as it is understood, by slot; undefined for N.C. */
export function useSectionAnalysis(section: Section): ReadonlyArray<AnalysedChord | undefined> {
  const key = useProject((project) => project.song.key);
  const { slots } = section;
  return useMemo(
    () =>
      analyse(
        slots.map((slot) => slot.chord),
        sectionKey({ slots }, key),
      ),
    [slots, key],
  );
}
