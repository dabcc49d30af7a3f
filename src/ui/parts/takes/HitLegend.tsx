import type { InputKind } from '../../../app/takeInputs.ts';
import { type MarkKind, markPath } from './hitMarks.ts';

/** What each mark means; the last is seen only with an input that knows keys. */
const MEANINGS: readonly { readonly kind: MarkKind; readonly words: string }[] = [
  { kind: 'played', words: 'played: early to the left, late to the right' },
  { kind: 'missed', words: 'left out' },
  { kind: 'extra', words: 'one too many' },
  { kind: 'wrong-key', words: 'a wrong note' },
];

const PICTURE = { width: 20, height: 18 } as const;

/** The marks on the spine and what they mean. */
export function HitLegend({ input }: { readonly input: InputKind }) {
  const shown = MEANINGS.filter(({ kind }) => kind !== 'wrong-key' || input === 'midi');
  return (
    <ul className="takes-legend" aria-label="Marks on the pattern">
      {shown.map(({ kind, words }) => (
        <li key={kind}>
          <svg {...PICTURE} aria-hidden="true" focusable="false">
            <path
              className={`takes-mark takes-${kind}`}
              d={markPath({ kind, x: kind === 'extra' ? 10 : 9, to: 13 }, PICTURE.height / 2)}
            />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
