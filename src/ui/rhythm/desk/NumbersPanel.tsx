import { useDeferredValue, useMemo } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { patternNumbers } from './numbers.ts';

/** Numbers of a pattern, each with what it means; an edit is drawn on the spine before they follow. */
export function NumbersPanel({ shown }: { readonly shown: Pattern }) {
  const counted = useDeferredValue(shown);
  const numbers = useMemo(() => patternNumbers(counted), [counted]);
  return (
    <dl className="desk-numbers">
      {numbers.map(({ name, value, means }) => (
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
