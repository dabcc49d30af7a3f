import '../parts/grid/patternGrid.css';
import './mix.css';
import { useId } from 'react';
import { setClick } from '../../state/edits/practice.ts';
import { PopupButton } from '../kit/PopupButton.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';
import type { ClickEar, Volumes } from '../parts/tool/viewState.ts';

const PARTS: readonly { readonly part: 'left' | 'right' | 'band'; readonly name: string }[] = [
  { part: 'left', name: 'Left hand' },
  { part: 'right', name: 'Right hand' },
  { part: 'band', name: 'Band' },
];

const EARS: readonly { readonly ear: ClickEar; readonly words: string }[] = [
  { ear: 'left', words: 'left ear' },
  { ear: 'both', words: 'both ears' },
  { ear: 'right', words: 'right ear' },
];

function Slider({
  name,
  level,
  onChange,
}: {
  readonly name: string;
  readonly level: number;
  readonly onChange: (level: number) => void;
}) {
  return (
    <label className="mix-line">
      <span>{name}</span>
      <input
        type="range"
        min={0}
        max={100}
        value={Math.round(level * 100)}
        onChange={(event) => onChange(Number(event.target.value) / 100)}
      />
    </label>
  );
}

function Levels() {
  const { store, view } = useParts();
  const volumes = useView((state) => state.volumes);
  const click = useProject((project) => project.practice.click.level);
  const name = useId();
  const set = (change: Partial<Volumes>) => view.set({ volumes: { ...volumes, ...change } });
  return (
    <div className="mix">
      {PARTS.map((each) => (
        <Slider
          key={each.part}
          name={each.name}
          level={volumes[each.part]}
          onChange={(level) => set({ [each.part]: level })}
        />
      ))}
      <Slider
        name="Click"
        level={click}
        onChange={(level) =>
          store.edit(setClick({ level }), {
            label: 'loudness of the click',
            gesture: 'click level',
          })
        }
      />
      <fieldset className="mix-ears bare">
        <legend>Click in the</legend>
        {EARS.map(({ ear, words }) => (
          <label key={ear}>
            <input
              type="radio"
              name={name}
              checked={volumes.clickEar === ear}
              onChange={() => set({ clickEar: ear })}
            />
            {words}
          </label>
        ))}
      </fieldset>
    </div>
  );
}

/** Opens how loud each part is beside the others, and in which ear the click is heard. */
export function MixButton() {
  return (
    <PopupButton name="Mix" className="foot-mix">
      {() => <Levels />}
    </PopupButton>
  );
}
