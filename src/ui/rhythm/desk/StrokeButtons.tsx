import type { PatternId } from '../../../core/ids.ts';
import type { HandName } from '../../../core/voicing/voicing.ts';
import type { Chosen } from '../../parts/grid/gridPlace.ts';
import { strokePulled } from '../../parts/grid/hitChanges.ts';
import { sourceName } from '../../parts/pattern/sourceNames.ts';
import { spokenStroke } from '../../parts/pattern/spokenPlace.ts';
import { useParts } from '../../parts/tool/parts.ts';

type Props = {
  readonly patternId: PatternId;
  readonly chosen: Extract<Chosen, { readonly kind: 'stroke' }>;
};

/** This stroke of the band: what it is, and into which hand it shall go. */
export function StrokeButtons({ patternId, chosen }: Props) {
  const { store } = useParts();
  const { source, stroke } = chosen;
  const into = (hand: HandName) => (
    <button
      type="button"
      onClick={() => {
        const { edit, label } = strokePulled(patternId, source, stroke, hand);
        store.edit(edit, { label });
      }}
    >
      Into the {hand} hand
    </button>
  );
  return (
    <>
      <h3 className="pattern-choice-title">The band plays</h3>
      <p>
        {sourceName(source)}: {spokenStroke(stroke)}
      </p>
      <div className="pattern-buttons">
        {into('right')}
        {into('left')}
      </div>
    </>
  );
}
