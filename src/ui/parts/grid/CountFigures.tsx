import type { Pixels, PlacedStep } from './systemLayout.ts';

/** Steps narrower than this have room for the syllables that matter, in a smaller hand. */
const NARROW: Pixels = 32;

function stepClass({ index, width }: PlacedStep): string {
  if (index === 0) return 'pattern-count-number';
  return width < NARROW ? 'pattern-count-syllable pattern-count-narrow' : 'pattern-count-syllable';
}

/** What is written on a step: in a narrow one `ta`, which fills in between the others, is a mere dot. */
function written(syllable: string | undefined, { width }: PlacedStep): string {
  return syllable === 'ta' && width < NARROW ? '·' : (syllable ?? '');
}

/** The spoken count of some steps, in figures and syllables; `left` is the x of what they stand in. */
export function CountFigures({
  steps,
  syllables,
  left,
}: {
  readonly steps: readonly PlacedStep[];
  readonly syllables: readonly string[];
  readonly left: Pixels;
}) {
  return steps.map((step) => (
    <span
      key={step.column}
      aria-hidden="true"
      className={stepClass(step)}
      style={{ left: step.x - left, width: step.width }}
    >
      {written(syllables[step.column], step)}
    </span>
  ));
}
