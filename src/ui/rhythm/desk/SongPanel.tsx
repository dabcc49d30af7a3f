import '../../parts/song/washes.css';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { playThroughout } from '../../../state/edits/sectionPatterns.ts';
import { PopupButton } from '../../kit/PopupButton.tsx';
import { Fits } from '../../parts/picture/Fits.tsx';
import {
  type SectionPlays,
  type SectionReturn,
  type Share,
  sectionsFor,
  sectionWords,
} from '../../parts/picture/sectionPlays.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import { FromBar } from './FromBar.tsx';

const PRESSED: Readonly<Record<Share, boolean | 'mixed'>> = {
  all: true,
  some: 'mixed',
  none: false,
};

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
      aria-pressed={PRESSED[plays]}
      disabled={plays === 'all' && !isOwn}
      onClick={() =>
        store.edit(
          playThroughout(
            { kind: 'playing', id: entry.id },
            plays === 'all' ? undefined : pattern.id,
          ),
          { label: 'pattern of this return' },
        )
      }
    >
      {time}
    </button>
  ));
}

function Ticket({ pattern, stand }: { readonly pattern: Pattern; readonly stand: SectionPlays }) {
  const { store } = useParts();
  const { section, plays, fits, returns } = stand;
  const place = { kind: 'section', id: section.id } as const;
  const inside = (
    <>
      <b>{section.name}</b> <small>{sectionWords(stand)}</small>
    </>
  );
  return (
    <li className="desk-section">
      {fits ? (
        <button
          type="button"
          className={`desk-ticket wash-${section.wash}`}
          aria-pressed={PRESSED[plays]}
          onClick={() =>
            store.edit(playThroughout(place, plays === 'all' ? undefined : pattern.id), {
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
              meter={section.meter}
              where={section.name}
              assign={(version) => playThroughout(place, version)}
              onTaken={close}
            />
          )}
        </PopupButton>
      )}
      {fits && <Returns name={section.name} pattern={pattern} returns={returns} />}
      {stand.bars > 1 && (
        <PopupButton
          name={`From bar … in ${section.name}`}
          className="desk-from-bar"
          label="from bar …"
        >
          {() => <FromBar pattern={pattern} stand={stand} />}
        </PopupButton>
      )}
    </li>
  );
}

/** The sections of the song: which of them play this pattern; in another meter, what it can be there. */
export function SongPanel({ pattern }: { readonly pattern: Pattern }) {
  const project = useProject((whole) => whole);
  return (
    <>
      <p className="desk-note">
        Press the sections that play this pattern, the number of a playing for that one alone, or
        choose from which bar on it is played.
      </p>
      <ul className="desk-sections" aria-label="Sections of the song">
        {sectionsFor(project, pattern).map((stand) => (
          <Ticket key={stand.section.id} pattern={pattern} stand={stand} />
        ))}
      </ul>
    </>
  );
}
