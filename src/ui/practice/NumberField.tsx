import { useId, useState } from 'react';

type Props = {
  readonly label: string;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
  readonly onChange: (value: number) => void;
};

/**
 * A whole number with big buttons for one less and one more. What is typed counts once it lies
 * within the limits; anything else is kept while typing and forgotten on leaving.
 */
export function NumberField({ label, value, lowest, highest, onChange }: Props) {
  const [typed, setTyped] = useState<string>();
  const take = (text: string) => {
    const number = Math.round(Number(text));
    const fits = text.trim() !== '' && number >= lowest && number <= highest;
    setTyped(fits ? undefined : text);
    if (fits && number !== value) onChange(number);
  };
  const id = useId();
  return (
    <div className="practice-number">
      <label htmlFor={id}>{label}</label>
      <button
        type="button"
        aria-label={`${label}: one less`}
        disabled={value <= lowest}
        onClick={() => onChange(value - 1)}
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
        onChange={(event) => take(event.target.value)}
        onBlur={() => setTyped(undefined)}
      />
      <button
        type="button"
        aria-label={`${label}: one more`}
        disabled={value >= highest}
        onClick={() => onChange(value + 1)}
      >
        +
      </button>
    </div>
  );
}
