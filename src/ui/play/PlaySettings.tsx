import { useState } from 'react';
import type { Times } from '../../app/score.ts';
import type { Meter } from '../../core/time/meter.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { PlanButton } from '../parts/plan/PlanButton.tsx';
import { HistoryButton } from '../parts/takes/HistoryButton.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import { PlayedArrangement } from '../parts/transport/ArrangementButton.tsx';
import { ClickFields } from '../parts/transport/ClickFields.tsx';
import { JoinsSheet } from './JoinsSheet.tsx';
import { PlayNotes } from './PlayNotes.tsx';
import { PlayRange } from './PlayRange.tsx';

const TIMES: readonly { readonly times: Times; readonly words: string }[] = [
  { times: 1, words: 'once' },
  ...[2, 3, 4, 6, 8].map((times) => ({ times, words: `${times} times` })),
  { times: 'until-stopped', words: 'again and again' },
];

function HowOften() {
  const { view } = useParts();
  const times = useView((state) => state.times);
  return (
    <label className="practice-choice">
      <span>Play it</span>
      <select
        value={String(times)}
        onChange={(event) => {
          const chosen = TIMES.find((each) => String(each.times) === event.target.value);
          if (chosen) view.set({ times: chosen.times });
        }}
      >
        {TIMES.map((each) => (
          <option key={each.words} value={String(each.times)}>
            {each.words}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Opens how the click is heard and the count-in. */
function ClickButton({ meter }: { readonly meter: Meter }) {
  return (
    <PopupButton name="Click and count-in …">
      {() => (
        <div className="practice-click-sheet">
          <ClickFields meter={meter} />
        </div>
      )}
    </PopupButton>
  );
}

/** While nothing plays: what is to be said of what was played; what is played, how often, after which count-in; and the way to joins and the plan. */
export function PlaySettings() {
  const timeline = useProject(selectTimeline);
  const range = useView((state) => state.range);
  const meter = (timeline.bars[range?.firstBar ?? 0] ?? timeline.bars[0])?.meter;
  const [showsJoins, setShowsJoins] = useState(false);
  return (
    <div className="practice-play-settings">
      <PlayNotes />
      <PlayRange timeline={timeline} />
      <div className="row">
        <HowOften />
        {meter && <ClickButton meter={meter} />}
        <PlayedArrangement />
        <button type="button" onClick={() => setShowsJoins(true)}>
          Hard joins …
        </button>
        <PlanButton />
        <HistoryButton />
      </div>
      {showsJoins && <JoinsSheet onClose={() => setShowsJoins(false)} />}
    </div>
  );
}
