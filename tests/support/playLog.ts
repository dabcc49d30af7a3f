import { NEAR_SEC } from '../../src/audio/notesToSound.ts';
import { endOf, type Pass, type Span } from '../../src/audio/pass.ts';
import type { Player } from '../../src/audio/player.ts';
import { LOOK_AHEAD_SEC } from '../../src/audio/scheduler.ts';
import type { TimedNote } from '../../src/core/rhythm/note.ts';
import type { Clock } from '../../src/core/time/clock.ts';
import type { Seconds } from '../../src/core/time/ticks.ts';

/** A note that was handed over: when it is to sound, and when it was handed over. */
export type Strike = {
  readonly note: TimedNote;
  readonly atSec: Seconds;
  readonly nowSec: Seconds;
};

/** One play-back from its beginning until it is stopped or over. */
type Run = { readonly edges: Seconds[]; readonly stretches: Map<Span, Seconds>; endSec: Seconds };

/** How far a note may lie from its place by rounding. */
const ROUNDING_SEC: Seconds = 1e-6;

/** A revision may move a note over the edge of what was handed over: see `notesToSound`. */
const EDGE_SEC: Seconds = NEAR_SEC + ROUNDING_SEC;

/**
 * Watches a player: put `watched` in its place, call `sample` often (each second at least) and
 * `struck` at every strike; `faults` then says in sentences what was lost, struck twice, out of
 * nowhere or late, and where the position went back.
 */
export function playLog<P extends Pass>(player: Player<P>, clock: Clock) {
  const runs: Run[] = [];
  const strikes: (Strike & { readonly run: number })[] = [];
  const faults: string[] = [];
  let isRunning = false;
  let heard: { readonly pass: P; readonly passIndex: number; readonly sec: Seconds } | undefined;

  const run = () => runs.at(-1);

  function samplePosition(): void {
    const now = player.position();
    if (!now || !heard || !isRunning) {
      heard = now;
      return;
    }
    const goesBack =
      now.passIndex < heard.passIndex || (now.pass === heard.pass && now.sec < heard.sec);
    if (goesBack)
      faults.push(`position back from ${heard.sec} s of ${heard.passIndex} to ${now.sec}`);
    heard = now;
  }

  function sample(): void {
    const current = run();
    if (!current || !isRunning) return;
    const spans = player.spans();
    for (const [i, span] of spans.entries())
      current.stretches.set(span, spans[i + 1]?.fromSec ?? Number.POSITIVE_INFINITY);
    // What was replaced as a whole before it began never sounds.
    for (const [span, toSec] of current.stretches)
      if (!spans.includes(span as Span<P>) && Math.min(toSec, endOf(span)) > clock() - 0.9)
        current.stretches.delete(span);
    samplePosition();
  }

  function begin(): void {
    close();
    runs.push({ edges: [], stretches: new Map(), endSec: Number.POSITIVE_INFINITY });
    isRunning = true;
    heard = undefined;
  }

  function close(): void {
    sample();
    const current = run();
    if (current && isRunning) current.endSec = clock();
    isRunning = false;
  }

  player.onEnd(close);

  const watched: Player<P> = {
    ...player,
    play(nextPass) {
      begin();
      player.play(nextPass);
      sample();
    },
    revise(revise) {
      sample();
      run()?.edges.push(clock() + LOOK_AHEAD_SEC);
      player.revise(revise);
      sample();
    },
    stop() {
      close();
      player.stop();
    },
  };

  return {
    watched,
    sample,
    isRunning: () => isRunning,
    struck(note: TimedNote, atSec: Seconds): void {
      if (!isRunning) faults.push(`struck while nothing plays, at ${clock()}`);
      strikes.push({ note, atSec, nowSec: clock(), run: runs.length - 1 });
    },
    strikes: (): readonly Strike[] => strikes,
    /** What went wrong; notes due at an `excused` time may be late or lost. */
    faults(excused: (atSec: Seconds) => boolean = () => false): string[] {
      close();
      const ofRuns = runs.flatMap((each, i) =>
        faultsOf(
          each,
          strikes.filter((strike) => strike.run === i),
          excused,
        ),
      );
      return [...faults, ...ofRuns];
    },
  };
}

/** Notes are told apart by part, key and time. */
function nameOf(note: TimedNote, atSec: Seconds): string {
  return `${note.part} ${note.keyNumber} at ${atSec.toFixed(4)}`;
}

function faultsOf(
  { edges, stretches, endSec }: Run,
  strikes: readonly Strike[],
  excused: (atSec: Seconds) => boolean,
): string[] {
  const isNearEdge = (sec: Seconds) => edges.some((edge) => Math.abs(sec - edge) <= EDGE_SEC);
  const due = [...stretches].flatMap(([span, toSec]) =>
    span.pass.notes
      .map((note) => ({ note, atSec: span.originSec + note.startSec }))
      .filter(({ atSec }) => atSec >= span.fromSec - ROUNDING_SEC && atSec < toSec),
  );
  const dueNames = countOf(due.map(({ note, atSec }) => nameOf(note, atSec)));
  const struckNames = countOf(strikes.map(({ note, atSec }) => nameOf(note, atSec)));
  const lost = due.filter(
    ({ note, atSec }) =>
      atSec < endSec &&
      !isNearEdge(atSec) &&
      !excused(atSec) &&
      !struckNames.has(nameOf(note, atSec)),
  );
  const fromNowhere = strikes.filter(
    ({ note, atSec }) => !isNearEdge(atSec) && !dueNames.has(nameOf(note, atSec)),
  );
  const twice = [...struckNames].filter(([name, count]) => count > (dueNames.get(name) ?? 1));
  const late = strikes.filter(
    ({ atSec, nowSec }) => nowSec > atSec + ROUNDING_SEC && !isNearEdge(atSec) && !excused(atSec),
  );
  return [
    ...lost.map(({ note, atSec }) => `lost: ${nameOf(note, atSec)}`),
    ...fromNowhere.map(({ note, atSec }) => `out of nowhere: ${nameOf(note, atSec)}`),
    ...twice.map(([name, count]) => `${count} times: ${name}`),
    ...late.map(({ note, atSec, nowSec }) => `${nowSec - atSec} s late: ${nameOf(note, atSec)}`),
  ];
}

function countOf(names: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return counts;
}
