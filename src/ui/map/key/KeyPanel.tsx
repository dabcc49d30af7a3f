import './keyPanel.css';
import './keyChords.css';
import { useState } from 'react';
import type { CadenceKind } from '../../../core/harmony/cadences.ts';
import type { Chord } from '../../../core/harmony/chord.ts';
import { formatChordSymbol } from '../../../core/harmony/chordSymbol.ts';
import { type Key, type MinorForm, sameKey } from '../../../core/harmony/key.ts';
import type { KeyChord } from '../../../core/harmony/keyChords.ts';
import { formatNumeral } from '../../../core/harmony/numerals.ts';
import type { Pace } from '../../../core/song/chordRow.ts';
import type { Meter } from '../../../core/time/meter.ts';
import { setKey } from '../../../state/edits/song.ts';
import { Choice } from '../../kit/Choice.tsx';
import { MusicText } from '../../parts/song/ChordName.tsx';
import { keyName } from '../../parts/song/chordRoleWords.ts';
import { signatureText } from '../../parts/song/songWords.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { useProject } from '../../parts/tool/useProject.ts';
import { CADENCE_NAMES, Cadences } from './Cadences.tsx';
import { rowRequest } from './hearing.ts';
import { KeyChords } from './KeyChords.tsx';
import { KeyNeighbours } from './KeyNeighbours.tsx';
import { KeySuggestions } from './KeySuggestions.tsx';
import { ScaleCircle } from './ScaleCircle.tsx';
import { ScaleLine } from './ScaleLine.tsx';
import { stepOffers } from './stepOffers.ts';

const MINOR_FORMS: readonly MinorForm[] = ['natural', 'harmonic', 'melodic'];

/** Where chords that are chosen can be written, and what does it. */
export type WritingPlace = {
  /** In words: “bar 3, beat 1”. */
  readonly name: string;
  readonly meter: Meter;
  readonly write: (chords: readonly Chord[], pace: Pace) => void;
};

/** What was heard last: its chords, what it is, and which offer it was. */
type Chosen = {
  readonly chords: readonly Chord[];
  readonly words: string;
  readonly numeral?: string;
  readonly cadence?: CadenceKind;
};

function chosenChord({ chord, numeral, target }: KeyChord): Chosen {
  const name = formatNumeral(numeral);
  const words = target ? `${name}, leads to ${formatChordSymbol(target)}` : name;
  return { chords: [chord], words, numeral: name };
}

/** What was heard last, to be heard again or written where the chart is chosen. */
function ChosenLine({
  chosen,
  place,
  onHear,
  onWrite,
}: {
  readonly chosen: Chosen;
  readonly place: string;
  readonly onHear: () => void;
  readonly onWrite: () => void;
}) {
  return (
    <div className="keypanel-chosen">
      <p aria-live="polite">
        <strong>
          <MusicText text={chosen.chords.map(formatChordSymbol).join('  ')} />
        </strong>{' '}
        <MusicText text={chosen.words} />
      </p>
      <button type="button" onClick={onHear}>
        Hear again
      </button>
      <button type="button" className="strong" onClick={onWrite}>
        Write at {place}
      </button>
    </div>
  );
}

function ShownKey({
  shown,
  place,
  onShow,
}: {
  readonly shown: Key;
  readonly place: WritingPlace;
  readonly onShow: (key: Key) => void;
}) {
  const { store, playback } = useParts();
  const songKey = useProject((project) => project.song.key);
  const [minorForm, setMinorForm] = useState<MinorForm>('natural');
  const [pace, setPace] = useState<Pace>('bar');
  const [chosen, setChosen] = useState<Chosen>();
  const hear = (next: Chosen) => {
    setChosen(next);
    void playback.play(rowRequest(next.chords, place.meter, pace));
  };
  const hearStep = (step: number) => {
    const triad = stepOffers(shown, minorForm)[step]?.triad;
    if (triad) hear(chosenChord(triad));
  };
  return (
    <>
      <header className="keypanel-head">
        <h3>
          <MusicText text={keyName(shown)} />
        </h3>
        <span className="hint">{signatureText(shown)}</span>
        {shown.mode === 'minor' && (
          <Choice
            label="Minor scale"
            options={MINOR_FORMS.map((form) => [form, form] as const)}
            chosen={minorForm}
            onChoose={setMinorForm}
          />
        )}
        <KeyNeighbours
          songKey={songKey}
          shown={shown}
          onShow={onShow}
          onTake={(key) => store.edit(setKey(key), { label: 'key' })}
        />
      </header>
      <div className="keypanel-body">
        <div className="keypanel-scale">
          <ScaleCircle
            of={shown}
            minorForm={minorForm}
            chord={chosen?.chords.at(-1)}
            onStep={hearStep}
          />
          <ScaleLine of={shown} minorForm={minorForm} />
          <KeySuggestions onShow={onShow} />
        </div>
        <div className="keypanel-offers">
          <KeyChords
            of={shown}
            minorForm={minorForm}
            chosen={chosen?.numeral}
            onChord={(offer) => hear(chosenChord(offer))}
          />
          <Cadences
            of={shown}
            chosen={chosen?.cadence}
            pace={pace}
            onPace={setPace}
            onCadence={({ kind, chords }) =>
              hear({
                chords: chords.map(({ chord }) => chord),
                words: CADENCE_NAMES[kind],
                cadence: kind,
              })
            }
          />
        </div>
      </div>
      {chosen ? (
        <ChosenLine
          chosen={chosen}
          place={place.name}
          onHear={() => hear(chosen)}
          onWrite={() => place.write(chosen.chords, pace)}
        />
      ) : (
        <p className="hint">Tap a chord or a cadence to hear it; then it can be written.</p>
      )}
    </>
  );
}

/**
 * What a key offers: its scale in a line and in a circle, the chords on its steps with what leads to
 * them, its cadences, its neighbours. Everything is heard at a tap and can then be written at `place`.
 * It shows the song's key, or another that is looked at until the song's key changes.
 */
export function KeyPanel({ place }: { readonly place: WritingPlace }) {
  const songKey = useProject((project) => project.song.key);
  const [looked, setLooked] = useState<{ readonly from: Key; readonly at: Key }>();
  const shown = looked && sameKey(looked.from, songKey) ? looked.at : songKey;
  return (
    <section className="keypanel" aria-label="What the key offers">
      <ShownKey
        key={keyName(shown)}
        shown={shown}
        place={place}
        onShow={(at) => setLooked({ from: songKey, at })}
      />
    </section>
  );
}
