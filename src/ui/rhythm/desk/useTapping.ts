import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { MidiKey } from '../../../app/midiDoor.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Tap } from '../../../core/rhythm/taps.ts';
import { beatLengths, tempoBeatTicks } from '../../../core/time/meter.ts';
import { secondsPerTick } from '../../../core/time/tempoMap.ts';
import type { Seconds } from '../../../core/time/ticks.ts';
import { setClick } from '../../../state/edits/practice.ts';
import { useHeardTempo } from '../../parts/pattern/useHeardTempo.ts';
import { useParts } from '../../parts/tool/parts.ts';
import type { TapManner, TapRun } from './tapResult.ts';
import { useClickClock } from './useClickClock.ts';

/** The keys under the index fingers, by their place on the keyboard; both have a bump to feel. */
export const TAP_KEYS = ['KeyF', 'KeyJ'] as const;

/**
 * Taps that are being made; a finger is a key or a pointer, moments are those of events in
 * milliseconds, `strength` is above 0 up to 1 where it is known.
 */
export type Tapping = {
  readonly running: TapManner | undefined;
  readonly taps: readonly Tap[];
  readonly start: (manner: TapManner) => void;
  readonly down: (finger: string, ms: number, strength?: number) => void;
  readonly up: (finger: string, ms: number) => void;
  /** Ends it and gives what was tapped; undefined where nothing was running. */
  readonly finish: () => Omit<TapRun, 'firstTick'> | undefined;
};

/** A tap this share of a beat before the first downbeat is meant for it; an earlier one is counting in. */
const EARLY_SHARE = 0.2;

/** Collects taps on two keys, on pads and on the keys of MIDI instruments, to the pattern's own click or freely. */
export function useTapping(pattern: Pattern): Tapping {
  const { store, playback } = useParts();
  const heardBpm = useHeardTempo();
  const [running, setRunning] = useState<TapManner>();
  const [taps, setTaps] = useState<readonly Tap[]>([]);
  const fingers = useRef(new Map<string, Seconds>());
  const clickTime = useClickClock(running === 'click', pattern);

  function timeOf(ms: number): Seconds | undefined {
    return running === 'click' ? clickTime(ms) : ms / 1000;
  }

  function startClick(): void {
    if (!store.snapshot().practice.click.on) store.edit(setClick({ on: true }), { label: 'click' });
    const state = playback.state();
    const request = state.status === 'stopped' ? undefined : state.request;
    const isHeard =
      request?.kind === 'pattern' && !request.pattern && request.patternId === pattern.id;
    if (!isHeard) void playback.play({ kind: 'pattern', patternId: pattern.id });
  }

  function down(finger: string, ms: number, strength?: number): void {
    const atSec = running && timeOf(ms);
    if (atSec === undefined) return;
    const beatTicks = tempoBeatTicks(pattern.meter);
    const early = EARLY_SHARE * beatLengths(pattern.meter)[0]!;
    const isCountIn =
      running === 'click' && atSec < -early * secondsPerTick({ bpm: heardBpm, beatTicks });
    if (isCountIn) return;
    fingers.current.set(finger, atSec);
    setTaps((before) => [...before, { atSec, ...(strength !== undefined && { strength }) }]);
  }

  function up(finger: string, ms: number): void {
    const atSec = fingers.current.get(finger);
    const untilSec = timeOf(ms);
    fingers.current.delete(finger);
    if (atSec === undefined || untilSec === undefined) return;
    setTaps((before) => before.map((tap) => (tap.atSec === atSec ? { ...tap, untilSec } : tap)));
  }

  useTapKeys(running !== undefined, down, up);
  useMidiTaps(running !== undefined, down, up);

  return {
    running,
    taps,
    start: (manner) => {
      setTaps([]);
      fingers.current.clear();
      setRunning(manner);
      if (manner === 'click') startClick();
      else playback.stop();
    },
    down,
    up,
    finish: () => {
      if (!running) return undefined;
      setRunning(undefined);
      const state = playback.state();
      const bpm = running === 'click' && state.status === 'playing' ? state.bpm : heardBpm;
      if (running === 'click') playback.stop();
      return { manner: running, taps, bpm };
    },
  };
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, textarea, select');
}

function isTapKey(event: KeyboardEvent): boolean {
  const isPlain = !(event.ctrlKey || event.altKey || event.metaKey || isTyping(event.target));
  return isPlain && TAP_KEYS.some((key) => key === event.code);
}

/** Hears the two keys, wherever on the page they are pressed, while `isRunning`. */
function useTapKeys(isRunning: boolean, down: Tapping['down'], up: Tapping['up']): void {
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (!isTapKey(event)) return;
    event.preventDefault();
    if (!event.repeat) down(event.code, event.timeStamp);
  });
  const release = useEffectEvent((event: KeyboardEvent) => {
    if (isTapKey(event)) up(event.code, event.timeStamp);
  });
  useEffect(() => {
    if (!isRunning) return undefined;
    addEventListener('keydown', press);
    addEventListener('keyup', release);
    return () => {
      removeEventListener('keydown', press);
      removeEventListener('keyup', release);
    };
  }, [isRunning]);
}

/** Hears every key of the instruments that are heard, while `isRunning`. */
function useMidiTaps(isRunning: boolean, down: Tapping['down'], up: Tapping['up']): void {
  const { midi } = useParts();
  const hear = useEffectEvent((key: MidiKey) => {
    const finger = `MIDI key ${key.keyNumber}`;
    if (key.kind === 'down') down(finger, key.atMs, key.strength);
    else up(finger, key.atMs);
  });
  useEffect(() => (isRunning ? midi.onKey(hear) : undefined), [isRunning, midi]);
}
