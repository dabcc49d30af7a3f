import type { Section } from '../../core/song/song.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { renameSection, setMeter } from '../../state/edits/form.ts';
import { playVersionIn, setSectionPattern } from '../../state/edits/sectionPatterns.ts';
import { useParts } from '../parts.ts';
import { PopupButton } from '../patternGrid/PopupButton.tsx';
import { useProject } from '../useProject.ts';
import { Fits } from '../workshop/Fits.tsx';
import { MeterField } from './MeterField.tsx';
import { PatternField } from './PatternField.tsx';
import { restsIn } from './restWords.ts';

/** Over the chart: the section's name in its box, its meter, its pattern. */
export function SectionHeading({ section }: { readonly section: Section }) {
  const { store } = useParts();
  const patterns = useProject((project) => project.patterns);
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
      <div role="status">
        {restsIn(section, patterns).map((rest) => (
          <div className="songmap-note" key={rest.bars[0]}>
            {rest.sentence}{' '}
            <PopupButton name={`Make it fit ${formatMeter(rest.meter)} …`}>
              {(close) => (
                <Fits
                  pattern={rest.pattern}
                  meter={rest.meter}
                  where={`Bar ${(rest.bars[0] ?? 0) + 1}`}
                  assign={(version) => playVersionIn(section.id, rest, version)}
                  onTaken={close}
                />
              )}
            </PopupButton>
          </div>
        ))}
      </div>
    </>
  );
}
