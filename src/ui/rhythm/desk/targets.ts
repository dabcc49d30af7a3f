import { unreachable } from '../../../core/result.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { SOURCE_PARTS, type SourcePart } from '../../../core/rhythm/sources.ts';
import type { Ticks } from '../../../core/time/ticks.ts';
import type { RhythmTarget } from '../../../state/edits/writeRhythm.ts';
import { PART_NAMES, sourceName } from '../../parts/pattern/sourceNames.ts';

/** Something a rhythm can be written into: under a key of its own, by its name in a list and in a sentence. */
export type NamedTarget = {
  readonly key: string;
  readonly name: string;
  readonly spoken: string;
  readonly group: 'hands' | 'band' | 'new in the band';
  readonly target: RhythmTarget;
};

function capital(word: string): string {
  return `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`;
}

/** Everything a rhythm can be written into: the hands, what the band has, what it could have. */
export function writingTargets({ sources }: Pick<Pattern, 'sources'>): NamedTarget[] {
  const hands = (['left', 'right'] as const).map(
    (hand): NamedTarget => ({
      key: hand,
      name: `${capital(hand)} hand`,
      spoken: `${hand} hand`,
      group: 'hands',
      target: { kind: 'hand', hand },
    }),
  );
  const band = sources.map(
    (source): NamedTarget => ({
      key: sourceKey(source.id),
      name: capital(sourceName(source)),
      spoken: sourceName(source),
      group: 'band',
      target: { kind: 'source', id: source.id },
    }),
  );
  const parts = SOURCE_PARTS.map(
    (part): NamedTarget => ({
      key: `new ${part}`,
      name: `${capital(PART_NAMES[part])}, new`,
      spoken: PART_NAMES[part],
      group: 'new in the band',
      target: { kind: 'new-source', part, name: capital(PART_NAMES[part]) },
    }),
  );
  return [...hands, ...band, ...parts];
}

/** The key of a source that is there. */
export function sourceKey(id: string): string {
  return `source ${id}`;
}

/** The target of a key; the left hand where the pattern has no such target any more. */
export function targetOfKey(pattern: Pick<Pattern, 'sources'>, key: string): NamedTarget {
  const targets = writingTargets(pattern);
  return targets.find((each) => each.key === key) ?? targets[0]!;
}

/** The part of the band that a target is; undefined for a hand. */
export function partOf(
  { sources }: Pick<Pattern, 'sources'>,
  target: RhythmTarget,
): SourcePart | undefined {
  if (target.kind === 'hand') return undefined;
  if (target.kind === 'new-source') return target.part;
  return sources.find(({ id }) => id === target.id)?.part;
}

/** The ticks at which a target is struck now. */
export function struckBy(pattern: Pattern, target: RhythmTarget): Ticks[] {
  switch (target.kind) {
    case 'hand':
      return pattern[target.hand].map(({ at }) => at);
    case 'source':
      return (pattern.sources.find(({ id }) => id === target.id)?.strokes ?? []).map(
        ({ at }) => at,
      );
    case 'new-source':
      return [];
    default:
      return unreachable(target);
  }
}
