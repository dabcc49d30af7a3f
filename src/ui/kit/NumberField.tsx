import { useId, useState } from 'react';

type Props = {
  readonly label: string;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
  /** How far the buttons go; 1 without it. */
  readonly step?: number;
  readonly onChange: (value: number) => void;
};

function stepWords(step: number): string {
  return step === 1 ? 'one' : String(step);
}

/**
 * A whole number with big buttons for less and more. What is typed counts once it lies
 * within the limits; anything else is kept while typing, with the limits beside it, and forgotten on
 * leaving.
 */
export function NumberField({ label, value, lowest, highest, step = 1, onChange }: Props) {
  const [typed, setTyped] = useState<string>();
  const take = (text: string) => {
    const number = Math.round(Number(text));
    const fits = text.trim() !== '' && number >= lowest && number <= highest;
    setTyped(fits ? undefined : text);
    if (fits && number !== value) onChange(number);
  };
  const id = useId();
  const limits = useId();
  return (
    <div className="practice-number">
      <label htmlFor={id}>{label}</label>
      <span id={limits} role="status" className="practice-problem">
        {typed !== undefined && `${lowest} to ${highest}`}
      </span>
      <button
        type="button"
        aria-label={`${label}: ${stepWords(step)} less`}
        disabled={value <= lowest}
        onClick={() => onChange(Math.max(lowest, value - step))}
      >
        −
      </button>
      <input
        id={id}
        type="number"
        inputMode="numeric"
        min={lowest}
        max={highest}
        value={typed ?? String(value)}
        aria-invalid={typed !== undefined}
        aria-describedby={limits}
        onChange={(event) => take(event.target.value)}
        onBlur={() => setTyped(undefined)}
      />
      <button
        type="button"
        aria-label={`${label}: ${stepWords(step)} more`}
        disabled={value >= highest}
        onClick={() => onChange(Math.min(highest, value + step))}
      >
        +
      </button>
    </div>
  );
}
