import type { KeyNumber } from '../../core/harmony/pitch.ts';
import type { BassManner, Manner, VoicingSettings } from '../../core/voicing/voicing.ts';
import { setVoicing } from '../../state/edits/voicing.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { plainKeyName } from '../parts/keyboard/noteNames.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';

type Options<T> = readonly (readonly [T, string])[];

const MANNERS: Options<Manner> = [
  ['close', 'close'],
  ['open', 'open'],
  ['shell', 'shell: third and seventh'],
  ['rootless', 'without the root'],
];

const BASSES: Options<BassManner> = [
  ['single', 'bass note'],
  ['octave', 'octave'],
  ['fifth', 'with the fifth'],
  ['tenth', 'with the tenth'],
  ['elsewhere', 'bass is played by someone else'],
];

/** Spans of a hand in semitones (docs/sources.md#hand-spans). */
const SPANS: Options<number> = [
  [12, 'octave'],
  [14, 'ninth'],
  [16, 'tenth'],
];

const FULLNESS: Options<VoicingSettings['fullness']> = [
  [3, '3 notes'],
  [4, '4 notes'],
  [5, '5 notes'],
];

/** Lowest and highest key of a piano of 88. */
const PIANO = { lowest: 21, highest: 108 } as const;

function Choose<T extends string | number>({
  label,
  options,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly options: Options<T>;
  readonly chosen: T;
  readonly onChoose: (option: T) => void;
}) {
  return (
    <label className="field">
      <span>{label}</span>
      <select
        value={chosen}
        onChange={(event) => {
          const option = options.find(([each]) => String(each) === event.target.value);
          if (option) onChoose(option[0]);
        }}
      >
        {options.map(([option, name]) => (
          <option key={option} value={option}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function keysBetween(lowest: KeyNumber, highest: KeyNumber): Options<KeyNumber> {
  return Array.from({ length: highest - lowest + 1 }, (_, i) => {
    const key = lowest + i;
    return [key, plainKeyName(key)] as const;
  });
}

function Ranges() {
  const { store } = useParts();
  const settings = useProject((project) => project.voicing);
  const { leftLowest, leftHighest, rightLowest, rightHighest } = settings;
  const set = (parts: Partial<VoicingSettings>) =>
    store.edit(setVoicing(parts), { label: 'range of a hand' });
  return (
    <PopupButton name="Ranges" className="quiet">
      {() => (
        <div className="keyboard-range-fields">
          <Choose
            label="Left from"
            options={keysBetween(PIANO.lowest, leftHighest)}
            chosen={leftLowest}
            onChoose={(key) => set({ leftLowest: key })}
          />
          <Choose
            label="Left to"
            options={keysBetween(leftLowest, PIANO.highest)}
            chosen={leftHighest}
            onChoose={(key) => set({ leftHighest: key })}
          />
          <Choose
            label="Right from"
            options={keysBetween(PIANO.lowest, rightHighest)}
            chosen={rightLowest}
            onChoose={(key) => set({ rightLowest: key })}
          />
          <Choose
            label="Right to"
            options={keysBetween(rightLowest, PIANO.highest)}
            chosen={rightHighest}
            onChoose={(key) => set({ rightHighest: key })}
          />
        </div>
      )}
    </PopupButton>
  );
}

/** What the hands may do: how chords are built, how far a hand reaches, what the left hand holds. */
export function HandSettings() {
  const { store } = useParts();
  const settings = useProject((project) => project.voicing);
  const set = (parts: Partial<VoicingSettings>, label: string) =>
    store.edit(setVoicing(parts), { label });
  return (
    <div className="keyboard-settings" role="group" aria-label="What the hands may do">
      <Choose
        label="Right hand"
        options={MANNERS}
        chosen={settings.manner}
        onChoose={(manner) => set({ manner }, 'manner of chords')}
      />
      <Choose
        label="at most"
        options={FULLNESS}
        chosen={settings.fullness}
        onChoose={(fullness) => set({ fullness }, 'notes of the right hand')}
      />
      <Choose
        label="Left hand"
        options={BASSES}
        chosen={settings.bass}
        onChoose={(bass) => set({ bass }, 'left hand')}
      />
      <Choose
        label="A hand reaches"
        options={SPANS}
        chosen={settings.spanSemitones}
        onChoose={(spanSemitones) => set({ spanSemitones }, 'span of a hand')}
      />
      <Ranges />
    </div>
  );
}
