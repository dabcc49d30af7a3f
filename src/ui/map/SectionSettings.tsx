import {
  type FormEntry,
  SECTION_KINDS,
  type Section,
  WASHES,
  type Wash,
} from '../../core/song/song.ts';
import {
  duplicateSection,
  removeSection,
  setSectionKind,
  setWash,
} from '../../state/edits/form.ts';
import { setEntryPattern } from '../../state/edits/sectionPatterns.ts';
import { newSectionId } from '../../state/newIds.ts';
import { KIND_NAMES } from '../parts/song/songWords.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { EndingField } from './EndingField.tsx';
import { PatternField } from './PatternField.tsx';
import { RestNotes } from './RestNotes.tsx';

function Washes({
  chosen,
  onChoose,
}: {
  readonly chosen: Wash;
  readonly onChoose: (wash: Wash) => void;
}) {
  return (
    <div className="songmap-washes" role="group" aria-label="Colour of the section">
      {WASHES.map((wash) => (
        <button
          type="button"
          key={wash}
          className={`wash-${wash}`}
          aria-label={wash}
          title={wash}
          aria-current={wash === chosen ? 'true' : undefined}
          onClick={() => onChoose(wash)}
        />
      ))}
    </div>
  );
}

/** What is set once for a section: its kind, its colour; the pattern of this return; copy and remove. */
export function SectionSettings({
  section,
  entry,
  playing,
}: {
  readonly section: Section;
  readonly entry: FormEntry | undefined;
  /** The name of this playing, “Verse 2”. */
  readonly playing: string;
}) {
  const { store, view } = useParts();
  const isLast = useProject((project) => project.song.sections.length === 1);
  const copy = () => {
    const id = newSectionId(store.snapshot());
    store.edit(duplicateSection(section.id, id), { label: 'copy section' });
    view.set({ sectionId: id, range: undefined });
  };
  const remove = () => {
    store.edit(removeSection(section.id), { label: 'remove section' });
    view.set({ sectionId: undefined, range: undefined });
  };
  return (
    <section className="songmap-side-part" aria-label="This section">
      <h3>{section.name}</h3>
      <label className="field">
        <span>Kind</span>
        <select
          value={section.kind}
          onChange={(event) => {
            const kind = SECTION_KINDS.find((each) => each === event.target.value);
            if (kind) store.edit(setSectionKind(section.id, kind), { label: 'kind of section' });
          }}
        >
          {SECTION_KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {KIND_NAMES[kind]}
            </option>
          ))}
        </select>
      </label>
      <Washes
        chosen={section.wash}
        onChoose={(wash) => store.edit(setWash(section.id, wash), { label: 'colour of section' })}
      />
      {entry && (
        <>
          <PatternField
            label={`Pattern in ${playing} only`}
            none="the section’s own"
            chosen={entry.patternId}
            onChoose={(patternId) =>
              store.edit(setEntryPattern(entry.id, patternId), { label: 'pattern of this return' })
            }
          />
          {(entry.patternId !== undefined || entry.patternChanges) && (
            <RestNotes section={section} entry={entry} />
          )}
          {entry.patternChanges && (
            <p>
              {entry.patternChanges.length > 0
                ? `${playing} changes its pattern at bars of its own.`
                : `${playing} keeps the pattern that it begins with.`}{' '}
              <button
                type="button"
                onClick={() =>
                  store.edit(setEntryPattern(entry.id, undefined), {
                    label: 'pattern of this return',
                  })
                }
              >
                Play as the section does
              </button>
            </p>
          )}
          <EndingField key={entry.id} section={section} entry={entry} playing={playing} />
        </>
      )}
      <div className="row">
        <button type="button" onClick={copy}>
          Copy section
        </button>
        <button type="button" disabled={isLast} onClick={remove}>
          Remove section
        </button>
      </div>
    </section>
  );
}
