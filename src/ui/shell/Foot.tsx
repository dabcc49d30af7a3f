import type { SoundingHands } from '../../core/practice/soundingHands.ts';
import type { Bpm } from '../../core/time/tempoMap.ts';
import { setBand, setClick, setSoundingHands } from '../../state/edits/practice.ts';
import { useParts } from '../parts.ts';
import { usePlayback, useProject, useView } from '../useProject.ts';
import { Icon } from './Icon.tsx';
import { Mix } from './Mix.tsx';

/** Which hands sound after one of them was switched. */
export function switched(hands: SoundingHands, hand: 'left' | 'right'): SoundingHands {
  const left = (hands === 'left' || hands === 'both') !== (hand === 'left');
  const right = (hands === 'right' || hands === 'both') !== (hand === 'right');
  if (left && right) return 'both';
  if (left) return 'left';
  return right ? 'right' : 'none';
}

function PlayButton({ onPlay }: { readonly onPlay: () => void }) {
  const { playback } = useParts();
  const stopped = usePlayback().status === 'stopped';
  return (
    <button type="button" className="foot-play strong" onClick={stopped ? onPlay : playback.stop}>
      <Icon name={stopped ? 'play' : 'stop'} />
      {stopped ? 'Play' : 'Stop'}
    </button>
  );
}

/** What the playing tempo is measured by: the song's, or that of a pattern that is tried. */
function speedWords(speedPercent: number, songBpm: Bpm, ownBpm: Bpm | undefined): string {
  if (speedPercent !== 100) return `${speedPercent} % of ${Math.round(ownBpm ?? songBpm)}`;
  return ownBpm === undefined ? 'song tempo' : 'its own tempo';
}

function Speed() {
  const { view } = useParts();
  const speed = useView((state) => state.speedPercent);
  const songBpm = useProject((project) => project.song.tempo.bpm);
  const playing = usePlayback();
  const request = playing.status === 'playing' ? playing.request : undefined;
  const inDrill = request?.kind === 'drill';
  const ownBpm = request?.kind === 'pattern' ? request.bpm : undefined;
  const bpm = playing.status === 'playing' ? playing.bpm : (songBpm * speed) / 100;
  return (
    <fieldset className="foot-group bare" disabled={inDrill}>
      <legend className="visually-hidden">Tempo</legend>
      <button type="button" aria-label="Slower" onClick={() => view.set(speedChanged(speed, -5))}>
        <Icon name="minus" />
      </button>
      <output className="foot-tempo" aria-label="Tempo in beats a minute">
        <strong>{Math.round(bpm)}</strong>
        <small>{inDrill ? 'this rung' : speedWords(speed, songBpm, ownBpm)}</small>
      </output>
      <button type="button" aria-label="Faster" onClick={() => view.set(speedChanged(speed, 5))}>
        <Icon name="plus" />
      </button>
    </fieldset>
  );
}

/** How slow and fast a song can be played, in per cent of its tempo. */
export const PLAYING_SPEED = { lowest: 30, highest: 150 } as const;

/** Playing speed a step slower or faster, brought within `PLAYING_SPEED`. */
export function speedChanged(speedPercent: number, by: number): { readonly speedPercent: number } {
  const { lowest, highest } = PLAYING_SPEED;
  return { speedPercent: Math.min(highest, Math.max(lowest, speedPercent + by)) };
}

function WhatSounds() {
  const { store } = useParts();
  const { click, hands, band } = useProject((project) => project.practice);
  const hand = (name: 'left' | 'right') => (
    <button
      type="button"
      aria-pressed={hands === name || hands === 'both'}
      onClick={() =>
        store.edit(setSoundingHands(switched(hands, name)), { label: 'hands that sound' })
      }
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
      <Speed />
      <WhatSounds />
      <Volume />
      <Mix />
    </footer>
  );
}
