import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { openBand, type Proposal, proposePattern } from '../../src/app/bandImport.ts';
import { patternLoad } from '../../src/app/patternLoad.ts';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { bandStrokes } from '../../src/core/rhythm/strokes.ts';
import { thinnedPattern } from '../../src/core/rhythm/thinnedPattern.ts';
import { barTicks } from '../../src/core/time/meter.ts';
import { project } from '../support/project.ts';

/** Files of real bands and drummers, beside the repository where somebody put them. */
const SHARED = resolve(import.meta.dirname, '../../../shared');
const FOLDERS = ['real', 'listening/midi'].map((name) => join(SHARED, name));

const FILES = FOLDERS.filter((folder) => existsSync(folder)).flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.mid'))
    .map((name) => ({ name, path: join(folder, name) })),
);

/** What is asked of a proposal, for one file. */
type Row = {
  readonly name: string;
  readonly f: number;
  readonly withinLimits: boolean;
  readonly hasOne: boolean;
  readonly beginsOnRoot: boolean;
  readonly emptyHands: number;
  readonly comfortable: number;
  readonly bpm: number;
  readonly levelOneHands: number;
};

/** The slower of the tempos at which the hands are comfortable; endless where neither ever is not. */
function comfortableBpm(pattern: Pattern, bpm: number): number {
  const load = patternLoad(project(), pattern, bpm);
  if (!load.ok) throw new Error(JSON.stringify(load.error));
  const { left, right } = load.value;
  return Math.min(...[left, right].map((hand) => hand.comfortableBpm ?? Number.POSITIVE_INFINITY));
}

function isWithinLimits(pattern: Pattern, bpm: number): boolean {
  const load = patternLoad(project(), pattern, bpm);
  return (
    load.ok && [load.value.left, load.value.right].every(({ strains }) => strains.length === 0)
  );
}

/** F-measure of the pattern's steps against each bar's strokes on the pattern's nearest steps, over the bars that agree. */
function stepF(path: string, { fold }: Proposal): number {
  const opened = openBand(readFileSync(path));
  if (!opened.ok) return 0;
  const { band, choice } = opened.value;
  const { strokes, beats } = bandStrokes(band, choice.roles, choice);
  const period = fold.bars * barTicks(fold.meter);
  const first = beats[0]!;
  let [right, found, truth] = [0, 0, 0];
  for (const source of fold.sources) {
    const steps = source.steps.filter((step) => step.presence >= 0.5);
    const own = strokes.filter((stroke) => stroke.source === source.id);
    const times = Math.max(1, Math.round((beats.at(-1)! - first) / period));
    const near = (at: number, step: number) =>
      Math.abs(((at - first - fold.latency - step + 1.5 * period) % period) - period / 2) <= 50;
    found += steps.length * times;
    truth += own.length;
    for (const step of steps)
      right += Math.min(times, own.filter((s) => near(s.at, step.at)).length);
  }
  return (2 * right) / (found + truth);
}

function rowOf({ name, path }: (typeof FILES)[number]): Row | string {
  const opened = openBand(readFileSync(path));
  if (!opened.ok) return `${name}: ${JSON.stringify(opened.error)}`;
  const { band, choice } = opened.value;
  const proposal = proposePattern(band, choice, { id: name, name });
  if (!proposal.ok) return `${name}: ${JSON.stringify(proposal.error)}`;
  const { pattern, bpm, first } = proposal.value;
  const one = pattern.left.find((hit) => hit.at === 0);
  const easiest = thinnedPattern(pattern, 1, bpm);
  return {
    name,
    f: stepF(path, proposal.value),
    withinLimits: isWithinLimits(pattern, bpm),
    hasOne: one !== undefined || first.leavesTheOne,
    beginsOnRoot: ['root', 'octave'].some((tone) =>
      (one ?? pattern.left[0])?.play.includes(tone as 'root'),
    ),
    emptyHands: [pattern.left, pattern.right].filter((hand) => hand.length === 0).length,
    comfortable: comfortableBpm(pattern, bpm),
    bpm,
    levelOneHands: [easiest.left, easiest.right].filter((hand) => hand.length > 0).length,
  };
}

function share(rows: readonly Row[], holds: (row: Row) => boolean): string {
  return `${rows.filter(holds).length} of ${rows.length}`;
}

it.runIf(FILES.length > 0)('proposes what a pianist would play tonight', () => {
  const all = FILES.map(rowOf);
  const rows = all.filter((row): row is Row => typeof row !== 'string');
  const lines = rows.map((row) =>
    [
      row.name.padEnd(56),
      row.f.toFixed(2),
      row.withinLimits ? 'within' : 'BEYOND',
      row.hasOne ? 'one' : 'NO ONE',
      row.beginsOnRoot ? 'root' : 'NO ROOT',
      `${row.emptyHands} empty`,
      `comfortable ${row.comfortable.toFixed(0)} of ${row.bpm.toFixed(0)}`,
      `level 1: ${row.levelOneHands} hands`,
    ].join('  '),
  );
  const meanF = rows.reduce((sum, row) => sum + row.f, 0) / rows.length;
  console.log(
    [
      ...lines,
      ...all.filter((row) => typeof row === 'string'),
      `F over steps ${meanF.toFixed(3)}; within the limits ${share(rows, (r) => r.withinLimits)}; ` +
        `one in the left ${share(rows, (r) => r.hasOne)}; begins on the root ${share(rows, (r) => r.beginsOnRoot)}; ` +
        `no empty hand ${share(rows, (r) => r.emptyHands === 0)}; level 1 with both hands ${share(rows, (r) => r.levelOneHands === 2)}`,
    ].join('\n'),
  );
  expect(rows.length).toBeGreaterThan(0);
});
