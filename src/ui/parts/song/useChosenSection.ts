import type { Section } from '../../../core/song/song.ts';
import { useProject, useView } from '../tool/useProject.ts';

/** The section that the pages show: the one chosen on this device, or the one that the song begins with. */
export function useChosenSection(): Section | undefined {
  const { sections, form } = useProject((project) => project.song);
  const chosen = useView((state) => state.sectionId);
  const withId = (id: string | undefined) => sections.find((section) => section.id === id);
  return withId(chosen) ?? withId(form[0]?.sectionId) ?? sections[0];
}
