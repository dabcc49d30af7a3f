import { useState } from 'react';
import type { PracticeTarget } from '../../../core/practice/takeRecord.ts';
import { groupBy } from '../../../core/rhythm/groupBy.ts';
import type { KeptTake } from '../../../state/takeRoom.ts';
import { useParts } from '../tool/parts.ts';
import { bpmWords, howWords, localDay, longDay, partWords, timeOfDay } from './historyWords.ts';

type RowProps = { readonly take: KeptTake; readonly isCrossedOut: boolean; readonly what: string };

function Row({ take, isCrossedOut, what }: RowProps) {
  const { takeHistory } = useParts();
  const time = timeOfDay(take.atMs);
  const act = isCrossedOut ? takeHistory.putBack : takeHistory.crossOut;
  const words = isCrossedOut ? 'Put back' : 'Remove';
  return (
    <li className={isCrossedOut ? 'takes-gone' : undefined}>
      <span className="takes-time">{time}</span>
      <b className="takes-bpm">
        {bpmWords(take.bpm)}
        <span className="visually-hidden"> beats a minute</span>
      </b>
      <div>
        {what !== '' && <span className="takes-what">{what}, </span>}
        {partWords(take)}
        <p>{isCrossedOut ? 'goes when this sheet is closed' : howWords(take)}</p>
      </div>
      <button
        type="button"
        className="quiet"
        aria-label={`${words}: ${what === '' ? '' : `${what}, `}${bpmWords(take.bpm)} at ${time}`}
        onClick={() => act([take.id])}
      >
        {words}
      </button>
    </li>
  );
}

/** So many takes are listed at once. */
const PAGE = 40;

/** Takes by day, the last one first; each can be removed, and put back as long as the list stands. */
export function TakeList({
  takes,
  crossedOut,
  nameOf,
}: {
  readonly takes: readonly KeptTake[];
  readonly crossedOut: readonly KeptTake[];
  /** What was practised; empty where all takes are of the same. */
  readonly nameOf: (target: PracticeTarget) => string;
}) {
  const [shown, setShown] = useState(PAGE);
  const all = [...takes, ...crossedOut].toSorted((a, b) => b.atMs - a.atMs);
  const gone = new Set(crossedOut.map(({ id }) => id));
  const days = groupBy(all.slice(0, shown), ({ atMs }) => localDay(atMs));
  return (
    <div className="takes-list">
      {[...days.entries()].map(([day, ofDay]) => (
        <section key={day} aria-label={longDay(day)}>
          <h3>{longDay(day)}</h3>
          <ol className="takes-day">
            {ofDay.map((take) => (
              <Row
                key={take.id}
                take={take}
                isCrossedOut={gone.has(take.id)}
                what={nameOf(take.target)}
              />
            ))}
          </ol>
        </section>
      ))}
      {all.length > shown && (
        <button type="button" onClick={() => setShown(shown + PAGE)}>
          Earlier takes
        </button>
      )}
    </div>
  );
}
