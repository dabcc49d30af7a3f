import { patternLoad } from '../../../app/patternLoad.ts';
import type { FirstHands } from '../../../core/rhythm/firstHands.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { useHandLimits } from '../../parts/pattern/useHandLimits.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { askedWords, leftOutWords, proposalNotes } from './proposalWords.ts';

/** The slower of the tempos at which each hand is comfortable with a pattern; undefined where any will do. */
function useComfortableBpm(pattern: Pattern, bandBpm: Bpm): Bpm | undefined {
  const { store } = useParts();
  const limits = useHandLimits();
  const load = patternLoad(store.snapshot(), pattern, bandBpm, limits);
  if (!load.ok) return undefined;
  const { left, right } = load.value;
  const tempos = [left, right].flatMap(({ comfortableBpm }) => comfortableBpm ?? []);
  return tempos.length > 0 ? Math.min(...tempos) : undefined;
}

/** What proposed hands ask at the band's tempo, what is left out of them, and the way to everything. */
export function FirstHandsWords({
  pattern,
  first,
  bpm,
  isFuller,
  onFuller,
}: {
  /** With the hands that are shown. */
  readonly pattern: Pattern;
  readonly first: FirstHands;
  readonly bpm: Bpm;
  readonly isFuller: boolean;
  readonly onFuller: (isFuller: boolean) => void;
}) {
  const comfortableBpm = useComfortableBpm(pattern, bpm);
  const leftOut = leftOutWords(first.leftOut);
  return (
    <>
      <div role="status">
        <p>{[askedWords({ comfortableBpm, bandBpm: bpm }), ...proposalNotes(first)].join(' ')}</p>
        {leftOut && !isFuller && <p className="hint">{leftOut}</p>}
      </div>
      {leftOut && (
        <button type="button" aria-pressed={isFuller} onClick={() => onFuller(!isFuller)}>
          Everything the band plays
        </button>
      )}
    </>
  );
}
