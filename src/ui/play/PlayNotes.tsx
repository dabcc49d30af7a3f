import '../parts/takes/takes.css';
import { useState } from 'react';
import { takeRemarks } from '../../core/practice/takeRemarks.ts';
import type { TakeScore } from '../../core/practice/takeScore.ts';
import { SheetDialog } from '../kit/SheetDialog.tsx';
import { hearingSentence } from '../parts/input/inputWords.ts';
import { TakeStory } from '../parts/takes/TakeStory.tsx';
import { remarkLine } from '../parts/takes/takeWords.ts';
import { useInput, usePlayerHearing } from '../parts/takes/useHearing.ts';
import { useSpokenStep } from '../parts/takes/useSpokenStep.ts';

/** The first thing to say of what was played, and the way to the rest. */
function ShortNotes({ score }: { readonly score: TakeScore }) {
  const [isOpen, setOpen] = useState(false);
  const spoken = useSpokenStep(undefined);
  const remarks = takeRemarks(score);
  const lines = remarks.map((remark) => remarkLine(remark, spoken));
  return (
    <div className="takes-short">
      <p role="status">
        {lines[0]?.words} <span className="takes-figure">{lines[0]?.figure}</span>
      </p>
      {lines.length > 1 && (
        <button type="button" className="quiet" onClick={() => setOpen(true)}>
          How it went …
        </button>
      )}
      {isOpen && (
        <SheetDialog title="How it went" onClose={() => setOpen(false)}>
          <div>
            <TakeStory score={score} spoken={spoken} />
          </div>
        </SheetDialog>
      )}
    </div>
  );
}

/** Said before one plays, as it would be too late after. */
function PadsElsewhere() {
  return (
    <div className="takes-short">
      <p>Here you are not heard: the pads stand on Drill.</p>
    </div>
  );
}

/** What is to be said of a playing of the song once it has stopped: a line that opens the rest; or why nobody was heard. */
export function PlayNotes() {
  const input = useInput();
  const { result, problem } = usePlayerHearing();
  if (input && problem)
    return (
      <div className="takes-short">
        <p role="status">You were not heard. {hearingSentence(problem, input)}</p>
      </div>
    );
  if (result?.of !== 'song' || !result.score) return input === 'pads' ? <PadsElsewhere /> : null;
  return <ShortNotes score={result.score} />;
}
