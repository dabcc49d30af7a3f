import type { Motions } from '../../core/voicing/sectionHands.ts';

function Figure({ value, name }: { readonly value: number | undefined; readonly name: string }) {
  if (value === undefined) return null;
  return (
    <li>
      <strong>{value}</strong> {name}
    </li>
  );
}

/** How far the right hand moves in a round, beside what it would be without the search. */
export function MotionTotals({
  motions,
  before,
}: {
  readonly motions: Motions;
  /** The total before the latest change of the hands. */
  readonly before: number | undefined;
}) {
  return (
    <div className="keyboard-totals" role="status">
      <p className="keyboard-total">
        Right hand: <strong>{motions.here}</strong> semitones in one round
      </p>
      <ul>
        {before !== motions.here && <Figure value={before} name="before the last change" />}
        <Figure value={motions.nearestEachTime} name="nearest each time" />
        <Figure value={motions.inRootPosition} name="in root position" />
      </ul>
    </div>
  );
}
