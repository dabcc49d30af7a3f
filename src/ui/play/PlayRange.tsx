import type { Timeline } from '../../core/song/timeline.ts';
import { NumberField } from '../kit/NumberField.tsx';
import { entryBars, playingName } from '../parts/song/marking.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useView } from '../parts/tool/useProject.ts';

/** What is played: the whole song, one playing of a section, bars by number, or from somewhere on to the end. */
export function PlayRange({ timeline }: { readonly timeline: Timeline }) {
  const { view } = useParts();
  const range = useView((state) => state.range);
  const last = timeline.bars.length;
  const ranges = timeline.sections.map((_, i) => entryBars(timeline, i));
  const chosen = ranges.findIndex(
    (each) => each.firstBar === range?.firstBar && each.endBar === range.endBar,
  );
  const choose = (value: string) =>
    view.set({ range: value === 'song' ? undefined : ranges[Number(value)] });
  return (
    <div className="row">
      <label className="practice-choice">
        <span>What to play</span>
        <select
          value={range ? (chosen < 0 ? 'bars' : String(chosen)) : 'song'}
          onChange={(event) => choose(event.target.value)}
        >
          <option value="song">the whole song</option>
          {timeline.sections.map((span, i) => (
            <option key={span.startTick} value={String(i)}>
              {playingName(timeline, i)}
            </option>
          ))}
          {range && chosen < 0 && <option value="bars">the bars marked</option>}
        </select>
      </label>
      <button
        type="button"
        disabled={!range || range.endBar === last}
        onClick={() => range && view.set({ range: { ...range, endBar: last } })}
      >
        On to the end
      </button>
      <div className="practice-bars">
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
      </div>
    </div>
  );
}
