import type { Seconds } from '../core/time/ticks.ts';
import { bassSights, type LowSight } from './bassSights.ts';
import type { RecordedPick } from './heardRecording.ts';
import { likelihood, weighedSum } from './logistic.ts';
import { LOWEST_PLACE_KEY, type LowPitches } from './lowPitches.ts';
import { PICK_MODEL } from './pickModel.ts';
import type { Strike } from './strikeLooks.ts';
import { quantile } from './strikes.ts';

/** Keys that picked and strummed strings sound with some strength. */
const PICK_KEYS = { lowest: 45, highest: 88 } as const;

/** A pitch counts for what it rises, but for no more than it stands out, and this besides. */
const STANDS_OUT_SLACK = 0.3;

/** A key is told where its newness is at least this many times the next one's that is no octave of it. */
const ONE_KEY = 1.5;

/** There is picking where so many strokes, and this share of them, are at least so likely. */
const SURE = { probability: 0.5, strokes: 3, share: 0.1 } as const;

/** The strong stroke that others are measured by: 1 in 50 is stronger. */
const STRONG_STROKES = 0.98;

/** Neighbours further away than this are all the same. */
const FAR_SEC: Seconds = 0.5;

/** Newness of a key's pitch at a strike (0 or more), and what stands out of its level. */
type NewPitches = { readonly newness: number[]; readonly clear: number[] };

/**
 * Strokes of picked, strummed and played chords: strikes after which pitches from A2 to E6 are new,
 * judged with the strike's look by a logistic model. `keyNumber` is the newest pitch, where one stands
 * out. A sung line that moves by steps can look alike; nothing where hardly a stroke is likely.
 */
export function findPicks(strikes: readonly Strike[], pitches: LowPitches): RecordedPick[] {
  const secs = strikes.map(({ sec }) => sec);
  const pitched = bassSights(pitches, secs).map(newPitches);
  const signs = pitched.map(signsOf);
  const usual = [0, 3].map((which) =>
    quantile(
      signs.map((own) => own[which]!),
      0.9,
    ),
  );
  const taken = strikes.flatMap(({ sec, look }, i) => {
    const own = signs[i]!;
    const probability = likelihood(
      weighedSum(
        [
          ...look,
          ...own,
          own[0]! - usual[0]!,
          own[3]! - usual[1]!,
          Math.min(FAR_SEC, i > 0 ? sec - secs[i - 1]! : 1),
          Math.min(FAR_SEC, i + 1 < secs.length ? secs[i + 1]! - sec : 1),
        ],
        PICK_MODEL,
      ),
    );
    if (probability < PICK_MODEL.taken) return [];
    const keyNumber = newestKey(pitched[i]!.newness);
    return [{ sec, newness: own[3]!, probability, ...(keyNumber !== undefined && { keyNumber }) }];
  });
  const sure = taken.filter(({ probability }) => probability >= SURE.probability).length;
  if (sure < Math.max(SURE.strokes, SURE.share * taken.length)) return [];
  const strong = quantile(
    taken.map(({ newness }) => newness),
    STRONG_STROKES,
  );
  return taken.map(({ newness, ...pick }) => ({
    ...pick,
    strength: strong > 0 ? Math.min(1, newness / strong) : 0,
  }));
}

function newPitches({ after, before }: LowSight): NewPitches {
  const newness: number[] = [];
  const clear: number[] = [];
  for (let key = PICK_KEYS.lowest; key <= PICK_KEYS.highest; key++) {
    const i = key - LOWEST_PLACE_KEY;
    const stands = after[i]! - Math.max(after[i - 1]!, after[i + 1]!);
    const rise = Math.max(0, after[i]! - before[i]!);
    clear.push(Math.max(0, stands));
    newness.push(stands > 0 ? Math.min(rise, stands + STANDS_OUT_SLACK) : 0);
  }
  return { newness, clear };
}

/** The newest pitch, the next, the mean of the four after, all; the clearest pitch, all. */
function signsOf({ newness, clear }: NewPitches): number[] {
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  const newest = newness.toSorted((a, b) => b - a);
  return [
    newest[0]!,
    newest[1]!,
    sum(newest.slice(2, 6)) / 4,
    sum(newness),
    Math.max(...clear),
    sum(clear),
  ];
}

function newestKey(newness: readonly number[]): number | undefined {
  const most = Math.max(...newness);
  const at = newness.indexOf(most);
  const next = Math.max(...newness.filter((_, i) => (i - at) % 12 !== 0));
  return most > 0 && most >= ONE_KEY * next ? PICK_KEYS.lowest + at : undefined;
}
