import { useMemo, useState } from 'react';
import type { OpenedBand } from '../../../app/bandImport.ts';
import { sameKey } from '../../../core/harmony/key.ts';
import type { TrackRole } from '../../../core/rhythm/band.ts';
import { bandMap } from '../../../core/rhythm/bandSong.ts';
import { type MapFault, type SectionDraft, songOfMap } from '../../../core/rhythm/mappedSong.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { SECTION_KINDS, type SectionKind, WASHES } from '../../../core/song/song.ts';
import { chartSentence } from '../../parts/chart/chartMessages.ts';
import { keyName } from '../../parts/song/chordRoleWords.ts';
import { barCount, KIND_NAMES } from '../../parts/song/songWords.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { alternativeWords, draftOf } from './mapDraft.ts';

/** So many keys are offered, likeliest first. */
const KEYS_OFFERED = 6;

function SectionFields({
  section,
  alternatives,
  fault,
  onChange,
}: {
  readonly section: SectionDraft;
  readonly alternatives: readonly string[];
  readonly fault: MapFault | undefined;
  readonly onChange: (parts: Partial<SectionDraft>) => void;
}) {
  return (
    <fieldset className="band-map-section">
      <legend>{section.name}</legend>
      <div className="band-map-names">
        <label>
          <span>Called</span>
          <input
            type="text"
            value={section.name}
            onChange={({ target }) => onChange({ name: target.value })}
          />
        </label>
        <label>
          <span>It is</span>
          <select
            value={section.kind}
            onChange={({ target }) => {
              const kind = target.value as SectionKind;
              onChange({ kind, name: KIND_NAMES[kind] });
            }}
          >
            {SECTION_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {KIND_NAMES[kind]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <textarea
        aria-label={`Chart of ${section.name}`}
        rows={section.chart.split('\n').length + 1}
        spellCheck={false}
        aria-invalid={fault !== undefined}
        value={section.chart}
        onChange={({ target }) => onChange({ chart: target.value })}
      />
      {fault && <p role="alert">{chartSentence(fault.error)}</p>}
      {alternatives.length > 0 && (
        <details>
          <summary>What its chords could be as well</summary>
          <p className="hint">{alternatives.join(' · ')}</p>
        </details>
      )}
    </fieldset>
  );
}

/**
 * The map of the whole song as a band's file tells it: key, tempo, sections with their charts and the form, each to
 * be corrected before it is opened as a new song. The song that lies open stays as it is.
 */
export function MapFromBand({
  opened,
  roles,
  name,
  pattern,
  onDone,
}: {
  readonly opened: OpenedBand;
  readonly roles: readonly TrackRole[];
  readonly name: string;
  /** The pattern that was found in the same file, to be played in the new song. */
  readonly pattern: Pattern | undefined;
  readonly onDone: () => void;
}) {
  const { songs, view } = useParts();
  const { band } = opened;
  const guess = useMemo(() => bandMap(band, roles), [band, roles]);
  const [place, setPlace] = useState(0);
  const key = guess.keys[place]?.key ?? guess.keys[0]?.key;
  const map = useMemo(() => (key ? bandMap(band, roles, key) : guess), [band, roles, key, guess]);
  const proposed = useMemo(() => key && draftOf(map, name, key), [map, name, key]);
  const [changed, setChanged] = useState<{ of: typeof proposed; draft: typeof proposed }>();
  const draft = changed?.of === proposed ? changed?.draft : proposed;
  const [fault, setFault] = useState<MapFault>();
  if (!draft || !key)
    return <p role="status">No chords are played in this file: there is no map to draw.</p>;
  const change = (parts: Partial<typeof draft>) =>
    setChanged({ of: proposed, draft: { ...draft, ...parts } });
  const take = async () => {
    const made = songOfMap(draft, () => crypto.randomUUID());
    setFault(made.ok ? undefined : made.error);
    if (!made.ok) return;
    const taken = pattern && { ...pattern, id: crypto.randomUUID() };
    if (await songs.openMade({ ...made.value, ...(taken && { pattern: taken }) })) {
      view.set({ page: 'map' });
      onDone();
    }
  };
  return (
    <div className="band-map">
      <div className="band-map-head">
        <label>
          <span>Title</span>
          <input
            type="text"
            value={draft.title}
            onChange={({ target }) => change({ title: target.value })}
          />
        </label>
        <label>
          <span>Key</span>
          <select value={place} onChange={({ target }) => setPlace(Number(target.value))}>
            {guess.keys.slice(0, KEYS_OFFERED).map((each, i) => (
              <option key={keyName(each.key)} value={i}>
                {keyName(each.key)} ({Math.round(100 * each.confidence)} %)
                {band.key && sameKey(band.key, each.key) ? ', says the file' : ''}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>Tempo</span>
          <input
            type="number"
            min={20}
            max={320}
            value={draft.tempo.bpm}
            onChange={({ target }) => {
              const bpm = Number(target.value);
              if (bpm >= 20 && bpm <= 320) change({ tempo: { ...draft.tempo, bpm } });
            }}
          />
        </label>
        <button type="button" className="strong" onClick={() => void take()}>
          Open as a new song
        </button>
      </div>
      <p className="band-map-form">
        {draft.form.map((section, i) => (
          <span key={i} className={`band-map-entry wash-${WASHES[section % WASHES.length]}`}>
            {draft.sections[section]?.name}{' '}
            <small>{barCount(map.sections[section]?.bars ?? 0)}</small>
          </span>
        ))}
      </p>
      <p className="hint">
        Sections that return are found by their chords and by who plays. Everything can be changed
        here and, later, on Map; the song that is open now stays as it is.
      </p>
      {draft.sections.map((section, i) => (
        <SectionFields
          key={i}
          section={section}
          alternatives={alternativeWords(map.sections[i]!)}
          fault={fault?.section === i ? fault : undefined}
          onChange={(parts) =>
            change({ sections: draft.sections.with(i, { ...section, ...parts }) })
          }
        />
      ))}
    </div>
  );
}
