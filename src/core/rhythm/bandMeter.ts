import { barTicks, beatLengths, beatStarts, type Meter, tempoBeatTicks } from '../time/meter.ts';
import type { TempoMap } from '../time/tempoMap.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Band, BandBar, TrackRole } from './band.ts';
import { drumPartOf } from './drumVoices.ts';

/**
 * How a band's music is barred where its file has it wrong. `meter`: the one meter it is in. `oneTick`: a
 * place (before `speed` is counted) where a bar begins. `speed`: 2 where it is felt twice as fast as written, so that a
 * written eighth is a quarter; 0.5 where half as fast.
 */
export type Barring = {
  readonly meter: Meter;
  readonly oneTick: Ticks;
  readonly speed: 0.5 | 1 | 2;
};

/** The tempo map at another speed: its ticks moved, and so many times as many beats to the minute. */
function spedTempos(
  marks: TempoMap,
  speed: number,
  meter: Meter,
  moved: (tick: Ticks) => Ticks,
): TempoMap {
  const beatTicks = tempoBeatTicks(meter);
  const all = marks.map(({ tick, tempo }) => ({
    tick: Math.max(0, moved(tick)),
    tempo: { bpm: (tempo.bpm * tempo.beatTicks * speed) / beatTicks, beatTicks },
  }));
  return all.filter(({ tick }, i) => all[i + 1]?.tick !== tick);
}

/**
 * The band barred anew: bars of one meter from the first downbeat on, as `barring` says. What is played before
 * that downbeat is an upbeat in a first bar of its own, filled up with silence, so that nothing is lost.
 */
export function rebarred(band: Band, { meter, oneTick, speed }: Barring): Band {
  const bar = barTicks(meter);
  const one = Math.round(oneTick * speed);
  const shift = (bar - (one % bar)) % bar;
  const moved = (tick: Ticks) => Math.round(tick * speed) + shift;
  const tracks = band.tracks.map((track) => ({
    ...track,
    notes: track.notes.map((note) => ({
      ...note,
      startTick: moved(note.startTick),
      durationTicks: Math.max(1, Math.round(note.durationTicks * speed)),
    })),
  }));
  const lengthTicks = moved(band.lengthTicks);
  const firstTick = Math.min(...tracks.flatMap(({ notes }) => notes.map((note) => note.startTick)));
  // An upbeat that is silent for a whole bar is none.
  const from = Math.floor(firstTick / bar) * bar;
  const back = (tick: Ticks) => tick - from;
  const bars: BandBar[] = Array.from(
    { length: Math.max(1, Math.ceil(back(lengthTicks) / bar)) },
    (_, i) => ({ startTick: i * bar, meter }),
  );
  return {
    ...band,
    bars,
    tracks: tracks.map((track) => ({
      ...track,
      notes: track.notes.map((note) => ({ ...note, startTick: back(note.startTick) })),
    })),
    lengthTicks: back(lengthTicks),
    tempoMap: spedTempos(band.tempoMap, speed, meter, (tick) => back(moved(tick))),
  };
}

/** So near to a beat a note is on it. */
const ON_BEAT_TICKS: Ticks = 60;

/** What speaks for a downbeat, beside a kick: a bass note, more so on a new pitch, and what is held long. */
const KICK = 1;
const BASS = 1;
const NEW_BASS = 2;
const LONG_NOTE = 0.5;

/** How often something happens on each tick of a raster of beats that speaks for a downbeat there. */
function weightsOnBeats(
  band: Band,
  roles: readonly TrackRole[],
  beatTicks: Ticks,
): readonly number[] {
  const weights = Array.from({ length: Math.ceil(band.lengthTicks / beatTicks) + 1 }, () => 0);
  const add = (tick: Ticks, weight: number) => {
    const beat = Math.round(tick / beatTicks);
    if (Math.abs(tick - beat * beatTicks) <= ON_BEAT_TICKS && beat in weights)
      weights[beat]! += weight;
  };
  band.tracks.forEach(({ notes }, index) => {
    const role = roles[index] ?? 'other';
    let before = -1;
    for (const { startTick, durationTicks, keyNumber } of notes) {
      if (role === 'drums' && drumPartOf(keyNumber) === 'kick') add(startTick, KICK);
      if (role === 'bass') add(startTick, keyNumber % 12 === before ? BASS : BASS + NEW_BASS);
      if (role === 'bass') before = keyNumber % 12;
      if (role !== 'drums' && role !== 'bass' && durationTicks >= 2 * beatTicks)
        add(startTick, LONG_NOTE);
    }
  });
  return weights;
}

/**
 * What speaks for each beat of the bar being its one: shares that add up to 1 (all alike where nothing
 * speaks), counted over the whole music from its first bar line on, in bars of `meter`.
 */
export function oneEvidence(band: Band, roles: readonly TrackRole[], meter: Meter): number[] {
  const starts = beatStarts(meter);
  const lengths = beatLengths(meter);
  const beatTicks = Math.min(...lengths);
  const raster = weightsOnBeats(band, roles, beatTicks);
  const perBar = barTicks(meter) / beatTicks;
  const sums = starts.map((start) =>
    raster.reduce((sum, weight, i) => (i % perBar === start / beatTicks ? sum + weight : sum), 0),
  );
  const total = sums.reduce((sum, weight) => sum + weight, 0);
  return sums.map((sum) => (total === 0 ? 1 / sums.length : sum / total));
}

/** The music crosses its bar lines where another beat has so many times the evidence of the written one. */
const CROSSING = 1.5;

/** The beat of the bar (0-based) that is its one by the evidence, where that clearly is not the first; undefined where the bar lines are right. */
export function crossedOne(evidence: readonly number[]): number | undefined {
  const most = Math.max(...evidence);
  const beat = evidence.indexOf(most);
  return beat > 0 && most >= CROSSING * evidence[0]! ? beat : undefined;
}
