import { useState } from 'react';
import type { KeptTake } from '../../../state/takeRoom.ts';
import { useParts } from '../tool/parts.ts';

function countWords(takes: readonly KeptTake[]): string {
  return takes.length === 1 ? 'the one take' : `all ${takes.length} takes`;
}

function idsOf(takes: readonly KeptTake[]) {
  return takes.map(({ id }) => id);
}

/** Removes all takes that are looked at, once one has said so twice; until the sheet is closed they can be put back. */
export function RemoveAll({
  takes,
  crossedOut,
  what,
}: {
  readonly takes: readonly KeptTake[];
  readonly crossedOut: readonly KeptTake[];
  /** Whose takes they are. */
  readonly what: string;
}) {
  const { takeHistory } = useParts();
  const [asks, setAsks] = useState(false);
  if (asks)
    return (
      <div className="row takes-ask" role="group" aria-label={`Remove ${countWords(takes)}`}>
        <span>
          Remove {countWords(takes)} of {what}?
        </span>
        <button
          type="button"
          onClick={() => {
            takeHistory.crossOut(idsOf(takes));
            setAsks(false);
          }}
        >
          Remove them
        </button>
        <button type="button" className="quiet" onClick={() => setAsks(false)}>
          Keep them
        </button>
      </div>
    );
  return (
    <>
      {takes.length > 0 && (
        <button type="button" className="quiet" onClick={() => setAsks(true)}>
          Remove all …
        </button>
      )}
      {crossedOut.length > 1 && (
        <button
          type="button"
          className="quiet"
          onClick={() => takeHistory.putBack(idsOf(crossedOut))}
        >
          Put all back
        </button>
      )}
    </>
  );
}
