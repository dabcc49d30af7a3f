import '../grid/patternGrid.css';
import './arrangement.css';
import type { Level } from '../../../core/rhythm/levels.ts';
import { type Arrangement, PLAYED_SEMITONES } from '../../../state/arrangement.ts';
import { Choice } from '../../kit/Choice.tsx';
import { PopupButton } from '../../kit/PopupButton.tsx';
import { LEVEL_WORDS } from '../pattern/levelWords.ts';
import { MusicText } from '../song/ChordName.tsx';
import { keyName } from '../song/chordRoleWords.ts';
import { useParts } from '../tool/parts.ts';
import { useProject, useView } from '../tool/useProject.ts';
import { arrangementWords, distanceWords, playedKey } from './arrangementWords.ts';

const LEVELS: readonly (readonly [string, string, Level?])[] = [
  ['all', 'as written'],
  ...([1, 2, 3, 4, 5] as const).map((level) => [String(level), String(level), level] as const),
];

type Props = {
  readonly arrangement: Arrangement;
  readonly onChange: (arrangement: Arrangement) => void;
};

function PlayedKey({ arrangement, onChange }: Props) {
  const written = useProject((project) => project.song.key);
  const { semitones } = arrangement;
  const { lowest, highest } = PLAYED_SEMITONES;
  const move = (by: number) => onChange({ ...arrangement, semitones: semitones + by });
  return (
    <fieldset className="bare arrangement-key">
      <legend>Key</legend>
      <button
        type="button"
        aria-label="A half step lower"
        disabled={semitones <= lowest}
        onClick={() => move(-1)}
      >
        −
      </button>
      <output>
        <strong>
          <MusicText text={keyName(playedKey(written, semitones))} />
        </strong>
        <small>{distanceWords(semitones)}</small>
      </output>
      <button
        type="button"
        aria-label="A half step higher"
        disabled={semitones >= highest}
        onClick={() => move(1)}
      >
        +
      </button>
    </fieldset>
  );
}

function PlayedLevel({ arrangement, onChange }: Props) {
  const { semitones, level } = arrangement;
  const choose = (name: string) => {
    const chosen = LEVELS.find(([each]) => each === name)?.[2];
    onChange({ semitones, ...(chosen !== undefined && { level: chosen }) });
  };
  return (
    <fieldset className="bare">
      <legend>How much of the patterns: a level</legend>
      <Choice
        label="Level"
        options={LEVELS.map(([name, words]) => [name, words] as const)}
        chosen={String(level ?? 'all')}
        onChoose={choose}
      />
      <p className="hint">{level === undefined ? 'all that is written' : LEVEL_WORDS[level]}</p>
    </fieldset>
  );
}

/** Opens the key and the level at which the song is played this time; the song stays as it is written. */
export function ArrangementButton({ arrangement, onChange }: Props) {
  const written = useProject((project) => project.song.key);
  const words = arrangementWords(written, arrangement);
  return (
    <PopupButton name={`Key and level: ${words}`} label={<MusicText text={words} />}>
      {() => (
        <div className="arrangement">
          <PlayedKey arrangement={arrangement} onChange={onChange} />
          <PlayedLevel arrangement={arrangement} onChange={onChange} />
          <p className="hint">Only as it is played: on Map the song stays as it is written.</p>
        </div>
      )}
    </PopupButton>
  );
}

/** The same for what plays on this device. */
export function PlayedArrangement() {
  const { view } = useParts();
  const arrangement = useView((state) => state.arrangement);
  return (
    <ArrangementButton
      arrangement={arrangement}
      onChange={(next) => view.set({ arrangement: next })}
    />
  );
}
