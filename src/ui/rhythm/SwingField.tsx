import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Swing } from '../../core/rhythm/swing.ts';
import { setSwing } from '../../state/edits/pattern.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { swingLevels, swingWords } from '../parts/pattern/swingWords.ts';
import { useParts } from '../parts/tool/parts.ts';

const LEVEL_NAMES: Readonly<Record<Swing['level'], string>> = {
  eighth: 'eighths',
  sixteenth: 'sixteenths',
};

/** Usual long-to-short ratios by name, where they lie under the slider. */
const MARKS = [
  { name: 'straight', ratio: 1 },
  { name: 'triplet', ratio: 2 },
  { name: 'dotted', ratio: 3 },
] as const;

/** How the pattern swings: at which level, and how much, in words. */
export function SwingField({ pattern }: { readonly pattern: Pattern }) {
  const { store } = useParts();
  const { meter, swing } = pattern;
  const set = (next: Swing, gesture?: string) =>
    store.edit(setSwing(pattern.id, next), { label: 'swing', ...(gesture && { gesture }) });
  const levels = swingLevels(meter);
  const level = levels.includes(swing.level) ? swing.level : levels[0]!;
  const words = swingWords(swing.ratio);
  const isStraight = words === 'straight';
  return (
    <PopupButton
      name={`Swing: ${words}`}
      label={
        <>
          <span className="pattern-caption">Swing</span>{' '}
          {isStraight ? words : `${LEVEL_NAMES[swing.level]}, ${words}`}
        </>
      }
    >
      {() => (
        <div className="pattern-swing">
          <div role="group" aria-label="What swings" className="pattern-buttons">
            {levels.map((each) => (
              <button
                key={each}
                type="button"
                aria-pressed={swing.level === each}
                onClick={() => set({ ...swing, level: each })}
              >
                {LEVEL_NAMES[each]}
              </button>
            ))}
          </div>
          <label className="field">
            <output>{words}</output>
            <input
              type="range"
              aria-label="How much it swings"
              aria-valuetext={words}
              min={1}
              max={3}
              step={0.05}
              value={swing.ratio}
              onChange={(event) =>
                set({ level, ratio: Number(event.target.value) }, `swing of ${pattern.id}`)
              }
            />
          </label>
          <div className="pattern-scale" role="group" aria-label="Usual swings">
            {MARKS.map(({ name, ratio }) => (
              <button
                key={name}
                type="button"
                aria-pressed={swing.ratio === ratio}
                onClick={() => set({ level, ratio }, `swing of ${pattern.id}`)}
              >
                {name}
              </button>
            ))}
          </div>
        </div>
      )}
    </PopupButton>
  );
}
