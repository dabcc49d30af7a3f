import { type TakeRemark, takeRemarks } from '../../../core/practice/takeRemarks.ts';
import type { TakeScore } from '../../../core/practice/takeScore.ts';
import { bandsSentence, handFigures, msWords, remarkLine, type SpokenStep } from './takeWords.ts';
import { useIsLatencyMeasured } from './useHearing.ts';

/** Remarks that say the figures would mean nothing. */
const MEANINGLESS: readonly TakeRemark['kind'][] = ['nothing-played', 'unrelated'];

type Props = { readonly score: TakeScore; readonly spoken: SpokenStep };

/** Remarks on a lateness that all hits share, which the device may have as well as the hand. */
const SHARED_LATENESS: readonly TakeRemark['kind'][] = ['early', 'late'];

/** What is said once instead of them where nobody knows how late the device is. */
function UnmeasuredLateness({ remarks }: { readonly remarks: readonly TakeRemark[] }) {
  const found = remarks.find(({ kind }) => SHARED_LATENESS.includes(kind));
  if (!found || !('ms' in found)) return null;
  return (
    <p className="takes-device">
      All of it comes about {msWords(found.ms)} {found.kind}. That may well be the device: measure
      its lateness once, under “I play”, and what is left is yours.
    </p>
  );
}

function Remarks({
  remarks,
  spoken,
}: {
  readonly remarks: readonly TakeRemark[];
  readonly spoken: SpokenStep;
}) {
  return (
    <ul className="takes-remarks">
      {remarks
        .map((remark) => remarkLine(remark, spoken))
        .map(({ words, figure }, i) => (
          <li key={i}>
            <span>{words}</span>
            <span className="takes-figure">{figure}</span>
          </li>
        ))}
    </ul>
  );
}

function Figures({ score }: { readonly score: TakeScore }) {
  return (
    <table className="takes-table">
      <thead>
        <tr>
          <th scope="col">Hand</th>
          <th scope="col">As a rule</th>
          <th scope="col">Uneven by</th>
        </tr>
      </thead>
      <tbody>
        {score.hands.map(handFigures).map(({ hand, lateness, unevenness }) => (
          <tr key={hand}>
            <th scope="row">{hand}</th>
            <td>{lateness}</td>
            <td>{unevenness}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** All that there is to say of a take: in words, then in figures. */
export function TakeStory({ score, spoken }: Props) {
  const remarks = takeRemarks(score);
  const hasFigures = !remarks.some(({ kind }) => MEANINGLESS.includes(kind));
  const isMeasured = useIsLatencyMeasured();
  const shown = isMeasured
    ? remarks
    : remarks.filter(({ kind }) => !SHARED_LATENESS.includes(kind));
  return (
    <>
      <div role="status">
        {!isMeasured && <UnmeasuredLateness remarks={remarks} />}
        <Remarks remarks={shown} spoken={spoken} />
      </div>
      {hasFigures && <Figures score={score} />}
      {hasFigures && score.gapSec !== undefined && (
        <p className="hint">{bandsSentence(score.gapSec)}</p>
      )}
    </>
  );
}
