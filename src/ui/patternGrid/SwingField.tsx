import type { Pattern } from '../../core/rhythm/pattern.ts';
import type { Swing } from '../../core/rhythm/swing.ts';
import { setSwing } from '../../state/edits/pattern.ts';
import { useParts } from '../parts.ts';
import { PopupButton } from './PopupButton.tsx';
import { swingLevels, swingWords } from './swingWords.ts';

const LEVEL_NAMES: Readonly<Record<Swing['level'], string>> = {
  eighth: 'eighths',
  sixteenth: 'sixteenths',
};

/** How the pattern swings: at which level, and how much, in words. */
export function SwingField({ pattern }: { readonly pattern: Pattern }) {
  const { store } = useParts();
  const { meter, swing } = pattern;
  const set = (next: Swing, gesture?: string) =>
    store.edit(setSwing(pattern.id, next), { label: 'swing', ...(gesture && { gesture }) });
  const levels = swingLevels(meter);
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
            {levels.map((level) => (
              <button
                key={level}
                type="button"
                aria-pressed={swing.level === level}
                onClick={() => set({ ...swing, level })}
              >
                {LEVEL_NAMES[level]}
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
                set(
                  {
                    level: levels.includes(swing.level) ? swing.level : levels[0]!,
                    ratio: Number(event.target.value),
                  },
                  `swing of ${pattern.id}`,
                )
              }
            />
            <span className="pattern-scale" aria-hidden="true">
              <span>straight</span>
              <span>triplet</span>
              <span>dotted</span>
            </span>
          </label>
        </div>
      )}
    </PopupButton>
  );
}
