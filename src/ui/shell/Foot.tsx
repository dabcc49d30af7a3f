import { setBand, setClick } from '../../state/edits/practice.ts';
import { Icon } from '../kit/Icon.tsx';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject, useView } from '../parts/tool/useProject.ts';
import { switched, useToolHands } from '../parts/transport/toolHands.ts';
import { FootTempo } from './FootTempo.tsx';
import { MixButton } from './MixButton.tsx';

function PlayButton({ onPlay }: { readonly onPlay: () => void }) {
  const { playback } = useParts();
  const stopped = usePlayback().status === 'stopped';
  return (
    <button type="button" className="foot-play strong" onClick={stopped ? onPlay : playback.stop}>
      <Icon name={stopped ? 'play' : 'stop'} />
      {stopped ? 'Start' : 'Stop'}
    </button>
  );
}

function WhatSounds() {
  const { store } = useParts();
  const { click, band } = useProject((project) => project.practice);
  const { hands, setHands } = useToolHands();
  const hand = (name: 'left' | 'right') => (
    <button
      type="button"
      aria-pressed={hands === name || hands === 'both'}
      onClick={() => setHands(switched(hands, name))}
    >
      {name === 'left' ? 'Left' : 'Right'}
    </button>
  );
  return (
    <fieldset className="foot-group bare">
      <legend className="visually-hidden">What the tool plays</legend>
      {hand('left')}
      {hand('right')}
      <button
        type="button"
        aria-pressed={band}
        onClick={() => store.edit(setBand(!band), { label: 'band' })}
      >
        Band
      </button>
      <button
        type="button"
        aria-pressed={click.on}
        onClick={() => store.edit(setClick({ on: !click.on }), { label: 'click' })}
      >
        Click
      </button>
    </fieldset>
  );
}

function Volume() {
  const { view } = useParts();
  const volumes = useView((state) => state.volumes);
  return (
    <label className="foot-group">
      <span className="foot-name">Volume</span>
      <input
        type="range"
        min={0}
        max={100}
        value={Math.round(volumes.master * 100)}
        onChange={(event) =>
          view.set({ volumes: { ...volumes, master: Number(event.target.value) / 100 } })
        }
      />
    </label>
  );
}

/** The bar that is the same on every page; what Play plays depends on the page. */
export function Foot({ onPlay }: { readonly onPlay: () => void }) {
  return (
    <footer className="foot">
      <PlayButton onPlay={onPlay} />
      <FootTempo />
      <WhatSounds />
      <Volume />
      <MixButton />
    </footer>
  );
}
