import type { PatternId } from '../../core/ids.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { useProject } from '../useProject.ts';

/** A choice among the project's patterns, or none. */
export function PatternField({
  label,
  none,
  chosen,
  onChoose,
}: {
  readonly label: string;
  /** What it means that no pattern is chosen. */
  readonly none: string;
  readonly chosen: PatternId | undefined;
  readonly onChoose: (patternId: PatternId | undefined) => void;
}) {
  const patterns = useProject((project) => project.patterns);
  return (
    <label className="field songmap-pattern">
      <span>{label}</span>
      <select
        value={chosen ?? ''}
        onChange={(event) => onChoose(event.target.value === '' ? undefined : event.target.value)}
      >
        <option value="">{none}</option>
        {patterns.map((pattern) => (
          <option key={pattern.id} value={pattern.id}>
            {pattern.name} ({formatMeter(pattern.meter)})
          </option>
        ))}
      </select>
    </label>
  );
}
