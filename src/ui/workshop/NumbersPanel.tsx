import type { Pattern } from '../../core/rhythm/pattern.ts';
import { patternNumbers } from './numbers.ts';

/** Numbers of a pattern, each with what it means. */
export function NumbersPanel({ shown }: { readonly shown: Pattern }) {
  return (
    <dl className="desk-numbers">
      {patternNumbers(shown).map(({ name, value, means }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <b>{value}</b>
            <span>{means}</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
