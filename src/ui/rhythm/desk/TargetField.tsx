import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { writingTargets } from './targets.ts';

const GROUPS = ['hands', 'band', 'new in the band'] as const;

/** Chooses what a rhythm is for, by its key: a hand, a part of the band, a new one. */
export function TargetField({
  pattern,
  chosen,
  onChoose,
}: {
  readonly pattern: Pick<Pattern, 'sources'>;
  readonly chosen: string;
  readonly onChoose: (key: string) => void;
}) {
  const targets = writingTargets(pattern);
  return (
    <select
      aria-label="For"
      className="desk-target"
      value={chosen}
      onChange={(event) => onChoose(event.target.value)}
    >
      {GROUPS.map((group) => (
        <optgroup key={group} label={group}>
          {targets
            .filter((target) => target.group === group)
            .map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
        </optgroup>
      ))}
    </select>
  );
}
