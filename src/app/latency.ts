import type { Pass } from '../audio/pass.ts';
import type { Player } from '../audio/player.ts';
import {
  CALIBRATION,
  type Calibration,
  type CalibrationError,
  calibrate,
} from '../core/practice/calibration.ts';
import { drillTimeline } from '../core/practice/drill.ts';
import { ok, type Result } from '../core/result.ts';
import { clickTrack } from '../core/rhythm/click.ts';
import { countIn } from '../core/rhythm/countIn.ts';
import { perform } from '../core/rhythm/perform.ts';
import type { Meter } from '../core/time/meter.ts';
import { steadyTempo } from '../core/time/tempoMap.ts';
import type { Seconds } from '../core/time/ticks.ts';
import type { OutputTimestamp } from '../input/eventTime.ts';
import type { HitInput, InputError } from '../input/hitInput.ts';

/** A measurement that is on its way. */
export type LatencyMeasurement = {
  /** Hits that have come in. */
  readonly hits: () => number;
  /** Ends with the last click's dying away; never, if it is cancelled. */
  readonly done: Promise<Result<Calibration, CalibrationError>>;
  readonly cancel: () => void;
};

export type LatencyParts = {
  /** A player of its own, while nothing else plays. */
  readonly player: Pick<Player, 'play' | 'stop' | 'spans' | 'onEnd'>;
  readonly outputTimestamp: () => OutputTimestamp;
};

const FOUR_BEATS: Meter = { beats: 4, unit: 4, groups: [2, 2] };

/** A bar of count-in and then the beats to play along with. */
function clicks(): Pass {
  const { beats, bpm } = CALIBRATION;
  const c = { letter: 'C', alteration: 0 } as const;
  const chord = { root: c, quality: 'major', tensions: [] } as const;
  const bars = drillTimeline(chord, FOUR_BEATS, beats / FOUR_BEATS.beats);
  return {
    notes: perform([...countIn(FOUR_BEATS, 1), ...clickTrack(bars)], steadyTempo(bpm)),
    leadInSec: (60 * FOUR_BEATS.beats) / bpm,
    lengthSec: (60 * beats) / bpm,
  };
}

/**
 * Plays clicks and listens to a player who plays along, to tell how late the input's hits arrive
 * (`calibrate`); that is the `latencySec` to take them with from then on. What is told includes the
 * player's own habit of playing early or late.
 */
export async function measureLatency(
  { player, outputTimestamp }: LatencyParts,
  listen: HitInput,
): Promise<Result<LatencyMeasurement, InputError>> {
  const hitsSec: Seconds[] = [];
  const onHit = ({ atSec }: { readonly atSec: Seconds }) => {
    hitsSec.push(atSec);
  };
  const listening = await listen({ outputTimestamp, latencySec: 0, onHit });
  if (!listening.ok) return listening;
  const passes = [clicks()];
  player.play(() => passes.shift());
  const [span] = player.spans();
  if (!span) throw new Error('a player has nothing to play');
  const clicksSec = span.pass.notes
    .filter((note) => note.startSec >= 0)
    .map((note) => span.originSec + note.startSec);

  const done = new Promise<Result<Calibration, CalibrationError>>((resolve) => {
    const stopWaiting = player.onEnd(() => {
      stopWaiting();
      listening.value();
      resolve(calibrate(clicksSec, hitsSec));
    });
  });
  const cancel = () => {
    listening.value();
    player.stop();
  };
  return ok({ hits: () => hitsSec.length, done, cancel });
}
