import type { SectionId } from '../../core/ids.ts';
import type { Section } from '../../core/song/song.ts';

/** Sections that the form does not play, so that they are not lost. */
export function Unplayed({
  sections,
  chosen,
  onChoose,
}: {
  readonly sections: readonly Section[];
  readonly chosen: SectionId;
  readonly onChoose: (sectionId: SectionId) => void;
}) {
  if (sections.length === 0) return null;
  return (
    <div className="songmap-unplayed" role="group" aria-label="Not in the form">
      <span className="hint">Not in the form:</span>
      {sections.map((section) => (
        <button
          type="button"
          key={section.id}
          className={`wash-${section.wash}`}
          aria-current={section.id === chosen ? 'true' : undefined}
          onClick={() => onChoose(section.id)}
        >
          {section.name}
        </button>
      ))}
    </div>
  );
}
