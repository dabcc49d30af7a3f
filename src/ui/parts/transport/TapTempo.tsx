import { useRef } from 'react';
import type { Bpm } from '../../../core/time/tempoMap.ts';
import { tappedBpm, withTap } from './tapTempo.ts';

/** A button that acts the moment it goes down, by any means, with the time of the event in seconds. */
export function PressButton({
  title,
  name,
  isOn,
  onPress,
  children,
}: {
  readonly title: string;
  /** What it is called where its text alone would not say. */
  readonly name?: string;
  readonly isOn?: boolean;
  readonly onPress: (atSec: number) => void;
  readonly children: string;
}) {
  return (
    <button
      type="button"
      title={title}
      aria-label={name}
      aria-pressed={isOn}
      onPointerDown={({ timeStamp }) => onPress(timeStamp / 1000)}
      onKeyDown={({ key, repeat, timeStamp }) => {
        if ((key === 'Enter' || key === ' ') && !repeat) onPress(timeStamp / 1000);
      }}
    >
      {children}
    </button>
  );
}

/** A button to tap a tempo on; from the third tap on it is told. */
export function TapTempo({
  name,
  onTempo,
}: {
  readonly name?: string;
  readonly onTempo: (bpm: Bpm) => void;
}) {
  const taps = useRef<readonly number[]>([]);
  const tap = (atSec: number) => {
    taps.current = withTap(taps.current, atSec);
    const tapped = tappedBpm(taps.current);
    if (tapped !== undefined) onTempo(tapped);
  };
  return (
    <PressButton title="Tap the beat three times or more" {...(name && { name })} onPress={tap}>
      Tap
    </PressButton>
  );
}
