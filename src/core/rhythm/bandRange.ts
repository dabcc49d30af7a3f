import { sameMeter } from '../time/meter.ts';
import type { Ticks } from '../time/ticks.ts';
import type { Band, TrackRole } from './band.ts';
import { type BandBars, bandStrokes } from './strokes.ts';

/** Bars that the steadiest stretch has, where the music is long enough. */
const FEWEST_BARS = 8;
const MOST_BARS = 16;

/** Bars after which a pattern may come again, and what likeness after so many is worth: short patterns are learned sooner. */
const LAGS = [
  { bars: 1, worth: 1 },
  { bars: 2, worth: 0.97 },
  { bars: 4, worth: 0.9 },
] as const;

/** Width of a place in a bar's profile: wide enough for uneven playing, half a sixteenth. */
const PLACE_TICKS: Ticks = 60;

/** What a stretch of the fewest bars loses against one of the most. */
const SHORT_LOSS = 0.04;

/** What each source plays where in a bar, as a sparse vector of strengths. */
type Profile = ReadonlyMap<string, number>;

/** Profiles of all bars; a stroke between two places counts to both by nearness. */
function barProfiles(band: Band, roles: readonly TrackRole[]): Profile[] {
  const profiles = band.bars.map(() => new Map<string, number>());
  const { strokes } = bandStrokes(band, roles, { firstBar: 0, lastBar: band.bars.length - 1 });
  const add = (bar: number, key: string, strength: number) => {
    const profile = profiles[bar];
    profile?.set(key, (profile.get(key) ?? 0) + strength);
  };
  let bar = 0;
  for (const { at, strength, source = '' } of strokes.toSorted((a, b) => a.at - b.at)) {
    while (band.bars[bar + 1] && band.bars[bar + 1]!.startTick <= at + PLACE_TICKS / 2) bar++;
    const place = (at - band.bars[bar]!.startTick) / PLACE_TICKS;
    const low = Math.floor(place);
    add(bar, `${source} ${low}`, strength * (1 - (place - low)));
    add(bar, `${source} ${low + 1}`, strength * (place - low));
  }
  return profiles;
}

function dot(a: Profile, b: Profile): number {
  let sum = 0;
  for (const [key, value] of a) sum += value * (b.get(key) ?? 0);
  return sum;
}

/** Cosine of the angle between two profiles: 1 for the same bar, 0 for nothing in common or silence. */
function likeness(a: Profile, b: Profile): number {
  const size = Math.sqrt(dot(a, a) * dot(b, b));
  return size === 0 ? 0 : dot(a, b) / size;
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, n) => sum + n, 0) / Math.max(1, numbers.length);
}

/** The sources that play in a bar. */
function playingIn(profile: Profile): Set<string> {
  return new Set([...profile.keys()].map((key) => key.split(' ')[0] ?? ''));
}

/** For each bar the share of the band's regular sources, those that play in a quarter of all bars, that play. */
function fullness(profiles: readonly Profile[]): number[] {
  const playing = profiles.map(playingIn);
  const all = [...new Set(playing.flatMap((sources) => [...sources]))];
  const regular = all.filter(
    (source) => playing.filter((sources) => sources.has(source)).length * 4 >= profiles.length,
  );
  return playing.map(
    (sources) =>
      regular.filter((source) => sources.has(source)).length / Math.max(1, regular.length),
  );
}

/** Runs of bars in one meter, as ranges. */
function meterRuns(band: Band): BandBars[] {
  const runs: BandBars[] = [];
  band.bars.forEach((bar, i) => {
    const last = runs.at(-1);
    const before = band.bars[i - 1];
    if (last && before && sameMeter(before.meter, bar.meter))
      runs[runs.length - 1] = { ...last, lastBar: i };
    else runs.push({ firstBar: i, lastBar: i });
  });
  return runs;
}

function windowsOf(run: BandBars): BandBars[] {
  const length = run.lastBar - run.firstBar + 1;
  if (length <= FEWEST_BARS) return [run];
  const sizes = [FEWEST_BARS, 12, MOST_BARS].filter((size) => size <= length);
  return sizes.flatMap((size) =>
    Array.from({ length: length - size + 1 }, (_, i) => ({
      firstBar: run.firstBar + i,
      lastBar: run.firstBar + i + size - 1,
    })),
  );
}

/**
 * The stretch of 8, 12 or 16 bars in one meter whose bars are most like the bar before, or two or four
 * before (whichever is most alike: a self-similarity of bars after Foote 2000), weighed by how many of
 * the band's regular sources play in it; of equals the longer, then the earlier. Music of fewer bars is taken
 * whole, the longest run of one meter.
 */
export function steadiestRange(band: Band, roles: readonly TrackRole[]): BandBars {
  const profiles = barProfiles(band, roles);
  const full = fullness(profiles);
  const alike = LAGS.map(({ bars }) =>
    profiles.map((profile, i) => (profiles[i + bars] ? likeness(profile, profiles[i + bars]!) : 0)),
  );
  const steadiness = ({ firstBar, lastBar }: BandBars) => {
    const size = lastBar - firstBar + 1;
    const byLag = LAGS.map(
      ({ bars, worth }, k) => worth * mean(alike[k]!.slice(firstBar, lastBar + 1 - bars)),
    );
    const shortness = Math.max(0, MOST_BARS - size) / (MOST_BARS - FEWEST_BARS);
    const filled = Math.sqrt(mean(full.slice(firstBar, lastBar + 1)));
    return Math.max(...byLag) * filled * (1 - SHORT_LOSS * shortness);
  };
  const runs = meterRuns(band);
  const longest = Math.max(...runs.map((run) => run.lastBar - run.firstBar));
  const windows = runs
    .filter((run) => run.lastBar - run.firstBar >= Math.min(longest, FEWEST_BARS - 1))
    .flatMap(windowsOf);
  return windows.reduce((best, w) => (steadiness(w) > steadiness(best) + 1e-9 ? w : best));
}
