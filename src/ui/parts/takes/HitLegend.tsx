import type { InputKind } from '../../../app/takeInputs.ts';
import type { Grade } from '../../../core/practice/tolerance.ts';
import { type MarkKind, markPath } from './hitMarks.ts';

type Meaning = { readonly kind: MarkKind; readonly grade?: Grade; readonly words: string };

/** What each mark means; the last is seen only with an input that knows keys. */
const MEANINGS: readonly Meaning[] = [
  { kind: 'played', grade: 'very-good', words: 'very good (early to the left, late to the right)' },
  { kind: 'played', grade: 'good', words: 'good' },
  { kind: 'played', grade: 'fair', words: 'fair' },
  { kind: 'played', grade: 'off', words: 'off' },
  { kind: 'missed', words: 'left out' },
  { kind: 'extra', words: 'one too many' },
  { kind: 'wrong-key', words: 'a wrong note' },
];

const PICTURE = { width: 20, height: 20 } as const;

/** The marks on the spine and what they mean. */
export function HitLegend({ input }: { readonly input: InputKind }) {
  const shown = MEANINGS.filter(({ kind }) => kind !== 'wrong-key' || input === 'midi');
  return (
    <ul className="takes-legend" aria-label="Marks on the pattern">
      {shown.map(({ kind, grade, words }) => (
        <li key={words}>
          <svg {...PICTURE} aria-hidden="true" focusable="false">
            <path
              className={`takes-mark takes-${kind} ${grade ? `takes-grade-${grade}` : ''}`.trim()}
              d={markPath(
                { kind, x: kind === 'extra' ? 10 : 9, to: 13, ...(grade && { grade }) },
                PICTURE.height / 2,
              )}
            />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
