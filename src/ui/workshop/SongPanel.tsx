import '../washes.css';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Section } from '../../core/song/song.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { type FittedPattern, fittedToMeter } from '../../state/edits/fitMeter.ts';
import { setEntryPattern, setSectionPattern } from '../../state/edits/sectionPatterns.ts';
import { addVariation } from '../../state/edits/variations.ts';
import { newPatternId } from '../../state/newIds.ts';
import { useParts } from '../parts.ts';
import { PopupButton } from '../patternGrid/PopupButton.tsx';
import { useProject } from '../useProject.ts';
import { RhythmPicture } from './RhythmPicture.tsx';
import {
  FIT_WORDS,
  type SectionPlays,
  type SectionReturn,
  sectionsFor,
  sectionWords,
} from './sectionPlays.ts';

const PICTURE_WIDTH = 340;

/** What a pattern can be in a section's meter, each with its picture. */
function Fits({
  pattern,
  section,
  onTake,
}: {
  readonly pattern: Pattern;
  readonly section: Section;
  readonly onTake: (fitted: FittedPattern) => void;
}) {
  return (
    <div className="desk-fits">
      <p>
        {section.name} is in {formatMeter(section.meter)}, “{pattern.name}” in{' '}
        {formatMeter(pattern.meter)}. It can have a version of its own:
      </p>
      {fittedToMeter(pattern, section.meter).map((fitted) => (
        <button key={fitted.fit} type="button" onClick={() => onTake(fitted)}>
          <span>{FIT_WORDS[fitted.fit]}</span>
          <RhythmPicture pattern={fitted.pattern} width={PICTURE_WIDTH} />
        </button>
      ))}
    </div>
  );
}

function Returns({
  name,
  pattern,
  returns,
}: {
  readonly name: string;
  readonly pattern: Pattern;
  readonly returns: readonly SectionReturn[];
}) {
  const { store } = useParts();
  return returns.map(({ entry, time, plays, isOwn }) => (
    <button
      key={entry.id}
      type="button"
      aria-label={`${name}, time ${time} only`}
      aria-pressed={plays}
      disabled={plays && !isOwn}
      onClick={() =>
        store.edit(setEntryPattern(entry.id, isOwn ? undefined : pattern.id), {
          label: 'pattern of this return',
        })
      }
    >
      {time}
    </button>
  ));
}

function Ticket({ pattern, stand }: { readonly pattern: Pattern; readonly stand: SectionPlays }) {
  const { store } = useParts();
  const { section, plays, fits, returns } = stand;
  const inside = (
    <>
      <b>{section.name}</b> <small>{sectionWords(stand)}</small>
    </>
  );
  const take = ({ pattern: fitted }: FittedPattern) => {
    const id = newPatternId(store.snapshot());
    const add = addVariation(pattern.id, id, `in ${formatMeter(section.meter)}`, fitted);
    store.edit((project) => setSectionPattern(section.id, id)(add(project)), {
      label: 'version in another meter',
    });
  };
  return (
    <li className="desk-section">
      {fits ? (
        <button
          type="button"
          className={`desk-ticket wash-${section.wash}`}
          aria-pressed={plays}
          onClick={() =>
            store.edit(setSectionPattern(section.id, plays ? undefined : pattern.id), {
              label: 'pattern of the section',
            })
          }
        >
          {inside}
        </button>
      ) : (
        <PopupButton
          name={`${section.name} ${sectionWords(stand)}, another meter`}
          className={`desk-ticket wash-${section.wash}`}
          label={inside}
        >
          {(close) => (
            <Fits
              pattern={pattern}
              section={section}
              onTake={(fitted) => {
                take(fitted);
                close();
              }}
            />
          )}
        </PopupButton>
      )}
      {fits && <Returns name={section.name} pattern={pattern} returns={returns} />}
    </li>
  );
}

/** The sections of the song: which of them play this pattern; in another meter, what it can be there. */
export function SongPanel({ pattern }: { readonly pattern: Pattern }) {
  const project = useProject((whole) => whole);
  return (
    <>
      <p className="desk-note">
        Press the sections that play this pattern, or a number for one time only.
      </p>
      <ul className="desk-sections" aria-label="Sections of the song">
        {sectionsFor(project, pattern).map((stand) => (
          <Ticket key={stand.section.id} pattern={pattern} stand={stand} />
        ))}
      </ul>
    </>
  );
}
