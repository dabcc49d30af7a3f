/** Courses have so many values a second. */
export const COURSE_RATE = 100;

/** Standard deviation of the bump that stands for an attack, in values of a course. */
const BUMP = 1.6;
const BUMP_REACH = 4;

/** How far off a repetition may be, in values of a course. */
const REPEAT_REACH = 3;

/** A much longer period must be better than a short one by this. */
const LONGER_BY = 0.05;
const MUCH_LONGER = 1.5;

/** How likely something is struck at each time, `COURSE_RATE` values a second, blurred by some 20 ms. */
export function attackCourse(
  secs: readonly number[],
  probabilities: readonly number[],
): Float64Array {
  const raw = new Float64Array(Math.floor((secs.at(-1) ?? 0) * COURSE_RATE) + 60);
  for (const [i, sec] of secs.entries()) {
    const at = Math.round(sec * COURSE_RATE);
    raw[at] = Math.max(raw[at]!, probabilities[i]!);
  }
  const out = new Float64Array(raw.length);
  for (let i = 0; i < raw.length; i++) {
    if (raw[i] === 0) continue;
    for (let d = -BUMP_REACH; d <= BUMP_REACH; d++)
      if (i + d >= 0 && i + d < out.length)
        out[i + d]! += raw[i]! * Math.exp(-0.5 * (d / BUMP) ** 2);
  }
  return out;
}

/**
 * After how many values of the courses they are most like themselves, from `shortest` to before
 * `longest`: the best mean of their normalised autocorrelations, of nearly equal ones the shorter.
 */
export function repeatingLag(
  courses: readonly Float64Array[],
  shortest: number,
  longest: number,
): number {
  const length = courses[0]?.length ?? 0;
  const end = length < 2 * longest ? Math.floor(length / 2) : longest;
  let best = 0;
  let bestLag = shortest;
  for (let lag = shortest; lag < end; lag++) {
    const likeness = courses.reduce((sum, course) => sum + likenessAt(course, lag), 0);
    if (likeness > best + (lag < MUCH_LONGER * bestLag ? 0 : LONGER_BY)) {
      best = likeness;
      bestLag = lag;
    }
  }
  return bestLag;
}

function likenessAt(course: Float64Array, lag: number): number {
  let both = 0;
  let early = 0;
  let late = 0;
  for (let i = lag; i < course.length; i++) {
    const a = course[i - lag]!;
    const b = course[i]!;
    both += a * b;
    early += a * a;
    late += b * b;
  }
  return early > 0 && late > 0 ? both / Math.sqrt(early * late) : 0;
}

/** How likely the same is struck one and two lags before and after a time, on average of those inside. */
export function repeated(course: Float64Array, sec: number, lag: number): number {
  const at = Math.round(sec * COURSE_RATE);
  const heard = [-2, -1, 1, 2].flatMap((times) => {
    const middle = at + times * lag;
    if (middle < 0 || middle >= course.length) return [];
    return [highest(course, middle)];
  });
  return heard.length === 0 ? 0 : heard.reduce((a, b) => a + b, 0) / heard.length;
}

function highest(course: Float64Array, middle: number): number {
  let most = 0;
  for (let i = middle - REPEAT_REACH; i <= middle + REPEAT_REACH; i++)
    most = Math.max(most, course[i] ?? 0);
  return most;
}
