import { useState } from 'react';
import { type CadenceKind, cadencesOf } from '../../core/harmony/cadences.ts';
import type { Chord } from '../../core/harmony/chord.ts';
import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { Key, MinorForm } from '../../core/harmony/key.ts';
import {
  diatonicSevenths,
  diatonicTriads,
  type KeyChord,
  secondaryDominants,
  tritoneSubstitutes,
} from '../../core/harmony/keyChords.ts';
import { formatNumeral } from '../../core/harmony/numerals.ts';
import { MusicText } from '../ChordName.tsx';
import { keyName } from '../chart/chordRoleWords.ts';
import { useProject } from '../useProject.ts';
import { KeyCircle } from './KeyCircle.tsx';
import { ScaleLine } from './ScaleLine.tsx';

const MINOR_FORMS: readonly MinorForm[] = ['natural', 'harmonic', 'melodic'];

const CADENCE_NAMES: Readonly<Record<CadenceKind, string>> = {
  perfect: 'Perfect',
  plagal: 'Plagal',
  half: 'Half',
  deceptive: 'Deceptive',
  'two-five-one': 'ii–V–I',
};

type OnChord = (chord: Chord) => void;

function OfferedChord({ offer, onChord }: { readonly offer: KeyChord; readonly onChord: OnChord }) {
  const { chord, numeral, target } = offer;
  return (
    <button type="button" className="songmap-offer" onClick={() => onChord(chord)}>
      <span className="songmap-offer-name">
        <MusicText text={formatChordSymbol(chord)} />
      </span>
      <small>
        <MusicText text={formatNumeral(numeral)} />
        {target && (
          <>
            {' → '}
            <MusicText text={formatChordSymbol(target)} />
          </>
        )}
      </small>
    </button>
  );
}

function OfferRow({
  name,
  offers,
  onChord,
}: {
  readonly name: string;
  readonly offers: readonly KeyChord[];
  readonly onChord: OnChord;
}) {
  return (
    <div className="songmap-offer-row" role="group" aria-label={name}>
      <span className="songmap-offer-title">{name}</span>
      {offers.map((offer) => (
        <OfferedChord key={formatNumeral(offer.numeral)} offer={offer} onChord={onChord} />
      ))}
    </div>
  );
}

function Cadences({
  songKey,
  onChords,
}: {
  readonly songKey: Key;
  readonly onChords: (chords: readonly Chord[]) => void;
}) {
  return (
    <div className="songmap-offer-row songmap-cadences" role="group" aria-label="Cadences">
      <span className="songmap-offer-title">Cadences</span>
      {cadencesOf(songKey).map(({ kind, chords }) => (
        <button
          type="button"
          className="songmap-offer"
          key={kind}
          onClick={() => onChords(chords.map(({ chord }) => chord))}
        >
          <span>
            <MusicText text={chords.map(({ chord }) => formatChordSymbol(chord)).join('  ')} />
          </span>
          <small>{CADENCE_NAMES[kind]}</small>
        </button>
      ))}
    </div>
  );
}

function MinorForms({
  chosen,
  onChoose,
}: {
  readonly chosen: MinorForm;
  readonly onChoose: (form: MinorForm) => void;
}) {
  return (
    <div className="chart-choice" role="group" aria-label="Minor scale">
      {MINOR_FORMS.map((form) => (
        <button
          type="button"
          key={form}
          aria-pressed={form === chosen}
          onClick={() => onChoose(form)}
        >
          {form}
        </button>
      ))}
    </div>
  );
}

/**
 * What the song's key offers: its scale, its chords, the dominants that lead to them, cadences. A chord
 * is written where the chart's chosen cell is, a cadence from its bar on, a bar for each chord.
 */
export function KeyOffers({
  place,
  onChord,
  onChords,
}: {
  /** Where a chord would be written, in words. */
  readonly place: string;
  readonly onChord: OnChord;
  readonly onChords: (chords: readonly Chord[]) => void;
}) {
  const songKey = useProject((project) => project.song.key);
  const [form, setForm] = useState<MinorForm>('natural');
  return (
    <section className="songmap-key" aria-label="What the key offers">
      <div className="songmap-key-lists">
        <div className="songmap-key-head">
          <h3>
            <MusicText text={keyName(songKey)} />
          </h3>
          {songKey.mode === 'minor' && <MinorForms chosen={form} onChoose={setForm} />}
          <span className="hint">Tap a chord to write it at {place}.</span>
        </div>
        <ScaleLine songKey={songKey} form={form} />
        <OfferRow name="Triads" offers={diatonicTriads(songKey, form)} onChord={onChord} />
        <OfferRow name="Sevenths" offers={diatonicSevenths(songKey, form)} onChord={onChord} />
        <OfferRow name="Leading on" offers={secondaryDominants(songKey)} onChord={onChord} />
        <OfferRow name="Tritone" offers={tritoneSubstitutes(songKey)} onChord={onChord} />
        <Cadences songKey={songKey} onChords={onChords} />
      </div>
      <KeyCircle songKey={songKey} onChord={onChord} />
    </section>
  );
}
