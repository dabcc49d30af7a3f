import { type TakeRemark, takeRemarks } from '../../core/practice/takeRemarks.ts';
import type { TakeScore } from '../../core/practice/takeScore.ts';
import type { Pattern } from '../../core/rhythm/pattern.ts';
import { spokenTick } from '../workshop/spokenTick.ts';
import { bandsSentence, handFigures, remarkLine } from './takeWords.ts';
import { usePlayerHearing } from './useHearing.ts';

function Remarks({
  remarks,
  pattern,
}: {
  readonly remarks: readonly TakeRemark[];
  readonly pattern: Pattern;
}) {
  const spoken = (tick: number) => spokenTick(pattern, tick);
  return (
    <ul className="takes-remarks">
      {remarks
        .map((remark) => remarkLine(remark, spoken))
        .map(({ words, figure }) => (
          <li key={words}>
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

/** Remarks that say the figures would mean nothing. */
const MEANINGLESS: readonly TakeRemark['kind'][] = ['nothing-played', 'unrelated'];

function Score({ score, pattern }: { readonly score: TakeScore; readonly pattern: Pattern }) {
  const remarks = takeRemarks(score);
  const hasFigures = !remarks.some(({ kind }) => MEANINGLESS.includes(kind));
  return (
    <>
      <div role="status">
        <Remarks remarks={remarks} pattern={pattern} />
      </div>
      {hasFigures && <Figures score={score} />}
      {hasFigures && score.gapSec !== undefined && (
        <p className="hint">{bandsSentence(score.gapSec)}</p>
      )}
    </>
  );
}

/** What is to be said of the rung that was left, or of the whole drill: in words, then in figures. */
export function DrillNotes({ pattern }: { readonly pattern: Pattern }) {
  const { result } = usePlayerHearing();
  if (result?.of !== 'drill') return null;
  const { bpm, score } = result;
  return (
    <section className="takes-notes" aria-labelledby="takes-notes-title">
      <h3 id="takes-notes-title">{bpm === undefined ? 'How it went' : `How ${bpm} went`}</h3>
      {score ? <Score score={score} pattern={pattern} /> : <p>Nothing was asked of you yet.</p>}
    </section>
  );
}
