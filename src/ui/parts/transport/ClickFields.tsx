import {
  CLICK_SOUNDS,
  type ClickBeats,
  type ClickSound,
  clickTicks,
  type Subdivision,
  subdivisionsOf,
} from '../../../core/rhythm/click.ts';
import type { ClickRests } from '../../../core/rhythm/clickRests.ts';
import { beatStarts, type Meter } from '../../../core/time/meter.ts';
import { setClick } from '../../../state/edits/practice.ts';
import { useParts } from '../tool/parts.ts';
import { useProject } from '../tool/useProject.ts';
import { CountInField } from './CountInField.tsx';
import { BETWEEN_WORDS, NAMED_BEATS, RESTS, restsWords, SOUND_WORDS } from './clickWords.ts';

/** The felt beats of a bar that click, 0-based. */
function clickingBeats(meter: Meter, beats: ClickBeats): number[] {
  const ticks = clickTicks(meter, beats);
  return beatStarts(meter).flatMap((start, beat) => (ticks.includes(start) ? [beat] : []));
}

/** One choice by its words. What is chosen already is offered, too, where it is not among the options. */
function ClickChoice<T>({
  name,
  options,
  chosen,
  onChoose,
}: {
  readonly name: string;
  readonly options: readonly (readonly [string, T])[];
  readonly chosen: string;
  readonly onChoose: (value: T) => void;
}) {
  const isListed = options.some(([words]) => words === chosen);
  return (
    <label className="practice-choice">
      <span>{name}</span>
      <select
        value={chosen}
        onChange={(event) => {
          const option = options.find(([words]) => words === event.target.value);
          if (option) onChoose(option[1]);
        }}
      >
        {options.map(([words]) => (
          <option key={words}>{words}</option>
        ))}
        {!isListed && <option>{chosen}</option>}
      </select>
    </label>
  );
}

function ClickedBeats({ meter }: { readonly meter: Meter }) {
  const { store } = useParts();
  const { beats } = useProject((project) => project.practice.click);
  const clicking = clickingBeats(meter, beats);
  const change = (next: ClickBeats) =>
    store.edit(setClick({ beats: next }), { label: 'beats that click' });
  const toggle = (beat: number) =>
    change(
      clicking.includes(beat)
        ? clicking.filter((each) => each !== beat)
        : [...clicking, beat].toSorted((a, b) => a - b),
    );
  return (
    <>
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
      <ClickChoice
        name="or"
        options={NAMED_BEATS.map(([named, words]) => [words, named])}
        chosen={NAMED_BEATS.find(([named]) => named === beats)?.[1] ?? 'As chosen above'}
        onChoose={change}
      />
    </>
  );
}

/** Which beats click and what ticks between them, when the click rests, its sound and level, and the count-in. */
export function ClickFields({ meter }: { readonly meter: Meter }) {
  const { store } = useParts();
  const click = useProject((project) => project.practice.click);
  const { subdivision, rests, sound = 'tick' } = click;
  return (
    <fieldset className="practice-fields">
      <legend>Click</legend>
      <ClickedBeats meter={meter} />
      <ClickChoice<Subdivision | undefined>
        name="Between the beats"
        options={[
          ['nothing', undefined],
          ...subdivisionsOf(meter).map((each) => [BETWEEN_WORDS[each], each] as const),
        ]}
        chosen={subdivision ? BETWEEN_WORDS[subdivision] : 'nothing'}
        onChoose={(next) =>
          store.edit(setClick({ subdivision: next }), { label: 'click between the beats' })
        }
      />
      <ClickChoice<ClickRests | undefined>
        name="Falls silent for"
        options={[undefined, ...RESTS].map((each) => [restsWords(each), each])}
        chosen={restsWords(rests)}
        onChoose={(next) => store.edit(setClick({ rests: next }), { label: 'rests of the click' })}
      />
      <ClickChoice<ClickSound>
        name="Sound"
        options={CLICK_SOUNDS.map((each) => [SOUND_WORDS[each], each])}
        chosen={SOUND_WORDS[sound]}
        onChoose={(next) => store.edit(setClick({ sound: next }), { label: 'sound of the click' })}
      />
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
      <CountInField />
    </fieldset>
  );
}
