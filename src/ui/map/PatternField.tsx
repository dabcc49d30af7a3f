import type { PatternId } from '../../core/ids.ts';
import { formatMeter } from '../../core/time/meter.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** The project's patterns to choose from, with their meters; `valueOf` gives what stands for one. */
export function PatternOptions({ valueOf }: { readonly valueOf: (id: PatternId) => string }) {
  const patterns = useProject((project) => project.patterns);
  return patterns.map(({ id, name, meter }) => (
    <option key={id} value={valueOf(id)}>
      {name} ({formatMeter(meter)})
    </option>
  ));
}

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
  return (
    <label className="field songmap-pattern">
      <span>{label}</span>
      <select
        value={chosen ?? ''}
        onChange={(event) => onChoose(event.target.value === '' ? undefined : event.target.value)}
      >
        <option value="">{none}</option>
        <PatternOptions valueOf={(id) => id} />
      </select>
    </label>
  );
}
