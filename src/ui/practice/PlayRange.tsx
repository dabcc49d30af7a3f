import { selectTimeline } from '../../state/selectors.ts';
import { useParts } from '../parts.ts';
import { entryBars, playingName } from '../songMap/marking.ts';
import { useProject, useView } from '../useProject.ts';
import { NumberField } from './NumberField.tsx';

/** What is played: the whole song, one playing of a section, or bars by number; once or again and again. */
export function PlayRange() {
  const { view } = useParts();
  const timeline = useProject(selectTimeline);
  const range = useView((state) => state.range);
  const times = useView((state) => state.times);
  const last = timeline.bars.length;
  const ranges = timeline.sections.map((_, i) => entryBars(timeline, i));
  const chosen = ranges.findIndex(
    (each) => each.firstBar === range?.firstBar && each.endBar === range.endBar,
  );
  const choose = (value: string) =>
    view.set({ range: value === 'song' ? undefined : ranges[Number(value)] });
  return (
    <div className="row practice-range">
      <label className="field">
        <span>What to play</span>
        <select
          value={range ? (chosen < 0 ? 'bars' : String(chosen)) : 'song'}
          onChange={(event) => choose(event.target.value)}
        >
          <option value="song">The whole song</option>
          {timeline.sections.map((span, i) => (
            <option key={span.startTick} value={String(i)}>
              {playingName(timeline, i)}
            </option>
          ))}
          {range && chosen < 0 && <option value="bars">The bars marked</option>}
        </select>
      </label>
      <NumberField
        label="From bar"
        value={(range?.firstBar ?? 0) + 1}
        lowest={1}
        highest={range?.endBar ?? last}
        onChange={(bar) =>
          view.set({ range: { firstBar: bar - 1, endBar: range?.endBar ?? last } })
        }
      />
      <NumberField
        label="To bar"
        value={range?.endBar ?? last}
        lowest={(range?.firstBar ?? 0) + 1}
        highest={last}
        onChange={(bar) => view.set({ range: { firstBar: range?.firstBar ?? 0, endBar: bar } })}
      />
      <button
        type="button"
        aria-pressed={times !== 1}
        onClick={() => view.set({ times: times === 1 ? 'until-stopped' : 1 })}
      >
        Again and again
      </button>
    </div>
  );
}
