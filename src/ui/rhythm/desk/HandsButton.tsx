import { HAND_LIMITS, type HandLimits } from '../../../core/rhythm/handLimits.ts';
import { PopupButton } from '../../kit/PopupButton.tsx';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { HAND_QUESTIONS } from './handQuestions.ts';

/** Asks what the player's hands can do; the answers hold on this device. */
function Questions() {
  const { view } = useParts();
  const limits = useHandLimits();
  const set = (change: Partial<HandLimits>) => view.set({ handLimits: { ...limits, ...change } });
  return (
    <div className="desk-hands">
      {HAND_QUESTIONS.map(({ limit, asks, answers }) => (
        <label key={limit}>
          <span>{asks}</span>
          <select
            value={answers.findIndex(({ value }) => Math.abs(value - limits[limit]) < 1e-6)}
            onChange={(event) => {
              const answer = answers[Number(event.target.value)];
              if (answer) set({ [limit]: answer.value });
            }}
          >
            {answers.map(({ value, words }, i) => (
              <option key={value} value={i}>
                {words}
              </option>
            ))}
          </select>
        </label>
      ))}
      <p>
        What is over this is marked as too much, and no level or fill made here asks for it; levels
        of a drill or a song keep to an average player. Estimates: stop if it hurts.
      </p>
      <button type="button" onClick={() => view.set({ handLimits: HAND_LIMITS })}>
        As an average player
      </button>
    </div>
  );
}

/** Opens what the player's hands can do. */
export function HandsButton() {
  return <PopupButton name="My hands">{() => <Questions />}</PopupButton>;
}
