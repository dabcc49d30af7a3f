import type { FormEntry, Section } from '../../core/song/song.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { type PatternPlace, playVersionIn } from '../../state/edits/sectionPatterns.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { Fits } from '../parts/picture/Fits.tsx';
import { useProject } from '../parts/tool/useProject.ts';
import { restsIn } from './restWords.ts';

/**
 * Where the hands rest in a section, or in a playing with patterns of its own, because a pattern does
 * not fit its bars; versions of the pattern that do are offered.
 */
export function RestNotes({
  section,
  entry,
}: {
  readonly section: Section;
  readonly entry?: FormEntry;
}) {
  const patterns = useProject((project) => project.patterns);
  const place: PatternPlace = entry
    ? { kind: 'playing', id: entry.id }
    : { kind: 'section', id: section.id };
  return (
    <div role="status">
      {restsIn(section, patterns, entry).map((rest) => (
        <div className="songmap-note" key={rest.bars[0]}>
          {rest.sentence}{' '}
          <PopupButton name={`Make it fit ${formatMeter(rest.meter)} …`}>
            {(close) => (
              <Fits
                pattern={rest.pattern}
                meter={rest.meter}
                where={`Bar ${(rest.bars[0] ?? 0) + 1}`}
                assign={(version) => playVersionIn(place, rest, version)}
                onTaken={close}
              />
            )}
          </PopupButton>
        </div>
      ))}
    </div>
  );
}
