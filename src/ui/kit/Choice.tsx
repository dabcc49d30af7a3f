import './choice.css';
import type { ReactNode } from 'react';

/** A few words of which one is chosen, with a pen stroke under it. */
export function Choice<T extends string>({
  label,
  options,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly options: readonly (readonly [T, ReactNode])[];
  readonly chosen: T;
  readonly onChoose: (option: T) => void;
}) {
  return (
    <div className="choice" role="group" aria-label={label}>
      {options.map(([option, name]) => (
        <button
          type="button"
          key={option}
          aria-pressed={option === chosen}
          onClick={() => onChoose(option)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
