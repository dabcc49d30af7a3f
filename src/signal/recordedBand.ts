import { chordTones } from '../core/harmony/chord.ts';
import { chromaOf } from '../core/harmony/pitch.ts';
import type { Band, BandBar, BandNote, BandTrack, TrackRole } from '../core/rhythm/band.ts';
import { barTicks, type Meter, parseMeter } from '../core/time/meter.ts';
import type { TempoMap } from '../core/time/tempoMap.ts';
import { type Seconds, TICKS_PER_QUARTER, type Ticks } from '../core/time/ticks.ts';
import type { DrumPiece, HeardRecording, RecordedBeat } from './heardRecording.ts';

/** A heard beat is written as a quarter note. */
const BEAT: Ticks = TICKS_PER_QUARTER;

/** General MIDI's key of each piece, as a band's file would have it (reference [M21], citing GM Level 1). */
const PIECE_KEYS: Readonly<Record<DrumPiece, number>> = { kick: 36, snare: 38, hat: 42 };

/** Where a stroke lies whose pitch was not heard, and in which octave chords are written. */
const UNPITCHED_KEY = 64;
const CHORD_OCTAVE_KEY = 60;

const ACOUSTIC_BASS = 32;
const STEEL_GUITAR = 25;
const PAD = 89;

function meterOf(beats: number): Meter {
  const meter = parseMeter(`${beats}/4`);
  if (!meter.ok) throw new Error(`no meter has ${beats} beats`);
  return meter.value;
}

/** Score time of the recording: tick 0 at the first sample's bar line, drifting beats a quarter each. */
type BeatClock = { readonly tickAt: (sec: Seconds) => number; readonly firstTick: Ticks };

/** Beats before the first downbeat are an upbeat at the end of a first bar. */
function beatClock(beats: readonly RecordedBeat[], beatsPerBar: number): BeatClock {
  const first = beats[0]!;
  const firstTick = first.positionInBar * BEAT;
  // What lies before the first beat goes on at its tempo; a bar is put before it, where it needs one.
  const leadIn =
    Math.ceil(first.sec / (beats[1]!.sec - first.sec) / beatsPerBar) * beatsPerBar * BEAT;
  const shift = firstTick + leadIn;
  const tickAt = (sec: Seconds) => {
    let low = 0;
    let high = beats.length - 2;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (beats[middle]!.sec <= sec) low = middle;
      else high = middle - 1;
    }
    const [from, to] = [beats[low]!.sec, beats[low + 1]!.sec];
    return shift + (low + (sec - from) / (to - from)) * BEAT;
  };
  return { tickAt, firstTick: shift };
}

/** Bars from the downbeats; one that has more or fewer beats than usual is a bar of its own meter. */
function barsOf(beats: readonly RecordedBeat[], beatsPerBar: number, firstTick: Ticks): BandBar[] {
  const usual = meterOf(beatsPerBar);
  const bars: BandBar[] = [];
  const firstDownbeat = beats.findIndex(({ positionInBar }) => positionInBar === 0);
  const fill = (toTick: Ticks) => {
    for (let last = bars.at(-1); ; last = bars.at(-1)) {
      const startTick = last ? last.startTick + barTicks(last.meter) : 0;
      if (startTick >= toTick) return;
      bars.push({ startTick, meter: usual });
    }
  };
  if (firstDownbeat < 0) {
    fill(firstTick + beats.length * BEAT);
    return bars;
  }
  fill(firstTick + firstDownbeat * BEAT);
  for (let i = firstDownbeat; i < beats.length; ) {
    let next = i + 1;
    while (next < beats.length && beats[next]!.positionInBar !== 0) next++;
    const count = next < beats.length ? next - i : beatsPerBar;
    bars.push({
      startTick: firstTick + i * BEAT,
      meter: count === beatsPerBar ? usual : meterOf(count),
    });
    i = next;
  }
  return bars;
}

function temposOf(beats: readonly RecordedBeat[], firstTick: Ticks): TempoMap {
  return beats.slice(0, -1).map(({ sec }, i) => ({
    tick: i === 0 ? 0 : firstTick + i * BEAT,
    tempo: { bpm: 60 / (beats[i + 1]!.sec - sec), beatTicks: BEAT },
  }));
}

function velocityOf(strength: number): number {
  return Math.min(127, Math.max(1, Math.round(127 * strength)));
}

/** Weights in a recording are shares of its strongest stroke; a chord is as loud as a usual one. */
const CHORD_VELOCITY = 80;

function track(name: string, guess: TrackRole, program: number, notes: BandNote[]): BandTrack[] {
  const isDrums = guess === 'drums';
  const ordered = notes
    .filter(({ startTick }) => startTick >= 0)
    .toSorted((a, b) => a.startTick - b.startTick || a.keyNumber - b.keyNumber);
  return ordered.length === 0
    ? []
    : [{ name, channel: isDrums ? 9 : 0, program, isDrums, notes: ordered, guess }];
}

/**
 * What was heard in a recording as a band, so that it takes the road of a band's file: drums, bass line, picking,
 * and the chords as held notes that feed no hand; beats are quarters in the tempo of each, bars begin at the
 * downbeats. Undefined where fewer than two beats or nothing else was heard.
 */
export function recordedBand(heard: HeardRecording): Band | undefined {
  const { beats, beatsPerBar, drums, bass, picks, chords } = heard;
  if (beats.length < 2 || beatsPerBar < 1) return undefined;
  const { tickAt, firstTick } = beatClock(beats, beatsPerBar);
  const at = (sec: Seconds) => Math.round(tickAt(sec));
  const lasting = (fromSec: Seconds, toSec: Seconds) => Math.max(1, at(toSec) - at(fromSec));
  const strokes = picks.map(({ sec, strength, keyNumber }) => ({
    startTick: at(sec),
    durationTicks: BEAT / 2,
    keyNumber: keyNumber ?? UNPITCHED_KEY,
    velocity: velocityOf(strength),
  }));
  const arePitched =
    picks.filter(({ keyNumber }) => keyNumber !== undefined).length * 2 > picks.length;
  const tracks = [
    ...track(
      'Drums',
      'drums',
      0,
      drums.map(({ sec, piece, strength }) => ({
        startTick: at(sec),
        durationTicks: BEAT / 4,
        keyNumber: PIECE_KEYS[piece],
        velocity: velocityOf(strength),
      })),
    ),
    ...track(
      'Bass line',
      'bass',
      ACOUSTIC_BASS,
      bass.map(({ sec, durationSec, keyNumber, strength }) => ({
        startTick: at(sec),
        durationTicks: lasting(sec, sec + durationSec),
        keyNumber,
        velocity: velocityOf(strength),
      })),
    ),
    ...track('Picking and strumming', arePitched ? 'picking' : 'strumming', STEEL_GUITAR, strokes),
    ...track(
      'Chords',
      'other',
      PAD,
      chords.flatMap(({ fromSec, toSec, chord }) =>
        chord === 'no-chord'
          ? []
          : chordTones(chord).map(({ pitchClass }) => ({
              startTick: at(fromSec),
              durationTicks: lasting(fromSec, toSec),
              keyNumber: CHORD_OCTAVE_KEY + chromaOf(pitchClass),
              velocity: CHORD_VELOCITY,
            })),
      ),
    ),
  ];
  if (tracks.length === 0) return undefined;
  const bars = barsOf(beats, beatsPerBar, firstTick);
  const last = bars.at(-1)!;
  return {
    bars,
    tempoMap: temposOf(beats, firstTick),
    tracks,
    lengthTicks: last.startTick + barTicks(last.meter),
    ...(heard.key && { key: { tonic: heard.key.tonic, mode: heard.key.mode } }),
  };
}
