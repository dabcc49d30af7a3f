import type { ClickBeats } from '../../core/rhythm/click.ts';
import { clickTicks } from '../../core/rhythm/click.ts';
import { beatStarts, type Meter } from '../../core/time/meter.ts';
import { setClick } from '../../state/edits/practice.ts';
import { useParts } from '../parts.ts';
import { useProject } from '../useProject.ts';
import { COUNT_INS } from './countIns.ts';

const NAMED_BEATS: readonly (readonly [Extract<ClickBeats, string>, string])[] = [
  ['all', 'Every beat'],
  ['groups', 'Stressed beats'],
  ['downbeat', 'Downbeat'],
  ['back-beat', 'Back-beat'],
];

/** The felt beats of a bar that click, 0-based. */
function clickingBeats(meter: Meter, beats: ClickBeats): number[] {
  const ticks = clickTicks(meter, beats);
  return beatStarts(meter).flatMap((start, beat) => (ticks.includes(start) ? [beat] : []));
}

/** Which beats click, how loudly, and how many bars are counted in. */
export function ClickSettings({ meter }: { readonly meter: Meter }) {
  const { store } = useParts();
  const click = useProject((project) => project.practice.click);
  const clicking = clickingBeats(meter, click.beats);
  const toggle = (beat: number) => {
    const beats = clicking.includes(beat)
      ? clicking.filter((each) => each !== beat)
      : [...clicking, beat].toSorted((a, b) => a - b);
    store.edit(setClick({ beats }), { label: 'beats that click' });
  };
  return (
    <fieldset className="practice-fields">
      <legend>Click</legend>
      <div className="row" role="group" aria-label="Beats that click">
        {beatStarts(meter).map((start, beat) => (
          <button
            type="button"
            key={start}
            className="practice-beat"
            aria-pressed={clicking.includes(beat)}
            onClick={() => toggle(beat)}
          >
            {beat + 1}
          </button>
        ))}
      </div>
      <label className="practice-choice">
        <span>or</span>
        <select
          value={typeof click.beats === 'string' ? click.beats : 'chosen'}
          onChange={(event) => {
            const named = NAMED_BEATS.find(([name]) => name === event.target.value);
            if (named) store.edit(setClick({ beats: named[0] }), { label: 'beats that click' });
          }}
        >
          {NAMED_BEATS.map(([name, label]) => (
            <option key={name} value={name}>
              {label}
            </option>
          ))}
          {typeof click.beats !== 'string' && <option value="chosen">As chosen above</option>}
        </select>
      </label>
      <label className="practice-choice">
        <span>Loudness of the click</span>
        <input
          type="range"
          min={0}
          max={100}
          value={Math.round(click.level * 100)}
          onChange={(event) =>
            store.edit(setClick({ level: Number(event.target.value) / 100 }), {
              label: 'loudness of the click',
              gesture: 'click level',
            })
          }
        />
      </label>
      <label className="practice-choice">
        <span>Count-in</span>
        <select
          value={click.countInBars}
          onChange={(event) => {
            const chosen = COUNT_INS.find((each) => String(each.bars) === event.target.value);
            if (chosen) store.edit(setClick({ countInBars: chosen.bars }), { label: 'count-in' });
          }}
        >
          {COUNT_INS.map(({ bars, words }) => (
            <option key={bars} value={bars}>
              {words}
            </option>
          ))}
        </select>
      </label>
    </fieldset>
  );
}
