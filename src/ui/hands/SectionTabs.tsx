import type { SectionId } from '../../core/ids.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** The sections of the song, each once; one is chosen for all pages. */
export function SectionTabs({ chosen }: { readonly chosen: SectionId }) {
  const { view } = useParts();
  const sections = useProject((project) => project.song.sections);
  return (
    <div className="keyboard-sections" role="group" aria-label="Section">
      {sections.map((section) => (
        <button
          type="button"
          key={section.id}
          className={`wash-${section.wash}`}
          aria-current={section.id === chosen ? 'true' : undefined}
          onClick={() => view.set({ sectionId: section.id })}
        >
          {section.name}
        </button>
      ))}
    </div>
  );
}
