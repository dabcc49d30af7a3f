import './desk.css';
import './songPanel.css';
import './workshop.css';
import type { PatternId } from '../../../core/ids.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { formatMeter, type Meter } from '../../../core/time/meter.ts';
import type { Edit } from '../../../state/edits/edit.ts';
import { type FittedPattern, fittedToMeter } from '../../../state/edits/fitMeter.ts';
import { addVariation } from '../../../state/edits/variations.ts';
import { newPatternId } from '../../../state/newIds.ts';
import { useParts } from '../tool/parts.ts';
import { RhythmPicture } from './RhythmPicture.tsx';
import { FIT_WORDS } from './sectionPlays.ts';

const PICTURE_WIDTH = 340;

/**
 * What a pattern can be in another meter, each with its picture. What is taken becomes a version of the
 * pattern, and `assign` has it played.
 */
export function Fits({
  pattern,
  meter,
  where,
  assign,
  onTaken,
}: {
  readonly pattern: Pattern;
  readonly meter: Meter;
  /** What is in that meter, as a sentence begins with it: “Verse”, “Bar 5”. */
  readonly where: string;
  readonly assign: (version: PatternId) => Edit;
  readonly onTaken: () => void;
}) {
  const { store } = useParts();
  const take = (fitted: FittedPattern) => {
    const id = newPatternId(store.snapshot());
    const add = addVariation(pattern.id, id, `in ${formatMeter(meter)}`, fitted.pattern);
    store.edit((project) => assign(id)(add(project)), { label: 'version in another meter' });
    onTaken();
  };
  return (
    <div className="desk-fits">
      <p>
        {where} is in {formatMeter(meter)}, “{pattern.name}” in {formatMeter(pattern.meter)}. It can
        have a version of its own:
      </p>
      {fittedToMeter(pattern, meter).map((fitted) => (
        <button key={fitted.fit} type="button" onClick={() => take(fitted)}>
          <span>{FIT_WORDS[fitted.fit]}</span>
          <RhythmPicture pattern={fitted.pattern} width={PICTURE_WIDTH} />
        </button>
      ))}
    </div>
  );
}
