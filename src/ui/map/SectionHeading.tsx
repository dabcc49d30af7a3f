import type { Section } from '../../core/song/song.ts';
import { renameSection, setMeter } from '../../state/edits/form.ts';
import { setSectionPattern } from '../../state/edits/sectionPatterns.ts';
import { useParts } from '../parts/tool/parts.ts';
import { MeterField } from './MeterField.tsx';
import { PatternField } from './PatternField.tsx';
import { RestNotes } from './RestNotes.tsx';

/** Over the chart: the section's name in its box, its meter, its pattern. */
export function SectionHeading({ section }: { readonly section: Section }) {
  const { store } = useParts();
  return (
    <>
      <div className="songmap-heading">
        <input
          type="text"
          className={`songmap-name wash-${section.wash}`}
          aria-label="Name of the section"
          value={section.name}
          onChange={(event) =>
            store.edit(renameSection(section.id, event.target.value), {
              label: 'name of the section',
              gesture: `name ${section.id}`,
            })
          }
        />
        <MeterField
          key={section.id}
          meter={section.meter}
          onMeter={(meter) => store.edit(setMeter(section.id, meter), { label: 'meter' })}
        />
        <PatternField
          label="Pattern"
          none="none: hands rest"
          chosen={section.patternId}
          onChoose={(patternId) =>
            store.edit(setSectionPattern(section.id, patternId), {
              label: 'pattern of the section',
            })
          }
        />
      </div>
      <RestNotes section={section} />
    </>
  );
}
