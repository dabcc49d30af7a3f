import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { openBand, type Proposal, proposePattern } from '../../src/app/bandImport.ts';
import { type Fold, type FoldedSource, foldStrokes } from '../../src/core/rhythm/fold.ts';
import { grooveOf } from '../../src/core/rhythm/foldSources.ts';
import { deriveHands } from '../../src/core/rhythm/hands.ts';
import { type Hit, patternSteps, type Step } from '../../src/core/rhythm/pattern.ts';
import { formatMeter } from '../../src/core/time/meter.ts';
import { groove, playGroove, UNEVEN } from '../support/grooves.ts';
import { gridNotes, midiFile, program } from '../support/midi.ts';
import { seededRandom } from '../support/random.ts';

/** Files of real bands, beside the repository where somebody put them. */
const REAL = resolve(import.meta.dirname, '../../../shared/real');

const SIGNS: Readonly<Record<string, string>> = {
  root: 'R',
  third: '3',
  fifth: '5',
  'fifth-below': '5',
  sixth: '6',
  seventh: '7',
  octave: '8',
  tenth: 'X',
  approach: 'a',
  all: 'C',
  upper: 'U',
  top: 'T',
};

/** One sign a step, beats apart, a bar line before each bar. */
function grid(steps: readonly Step[], signAt: (step: Step) => string): string {
  return steps
    .map((step) => {
      const apart = step.index > 0 ? '' : step.beat.beat === 0 ? ' | ' : ' ';
      return apart + signAt(step);
    })
    .join('');
}

/** Struck tones, two at once as `D`; `-` while held; a touch below: `>` accent, `o` ghost, `'` short, `~` anticipates. */
function handLines(steps: readonly Step[], hits: readonly Hit[]): [string, string] {
  const at = (step: Step) => hits.find((hit) => hit.at === step.at);
  const isHeld = ({ at: tick }: Step) =>
    hits.some((hit) => hit.held && hit.at < tick && hit.at + hit.length > tick);
  const tones = grid(steps, (step) => {
    const hit = at(step);
    if (!hit) return isHeld(step) ? '-' : '.';
    const [tone = 'all', second] = hit.play;
    return second ? 'D' : (SIGNS[tone] ?? tone.replace('voice-', ''));
  });
  const touches = grid(steps, (step) => {
    const hit = at(step);
    if (!hit) return ' ';
    if (hit.anticipates) return '~';
    if (hit.touch === 'accent') return '>';
    if (hit.touch === 'ghost') return 'o';
    return hit.held ? ' ' : "'";
  });
  return [tones, touches];
}

/** A source: `X` loud, `x` plain, `o` soft where half of the bars play; a digit for tenths below that. */
function sourceLine(steps: readonly Step[], source: FoldedSource): string {
  return grid(steps, (step) => {
    const found = source.steps.find(({ at }) => at === step.at);
    if (!found || found.presence < 0.1) return '.';
    if (found.presence < 0.5) return String(Math.floor(found.presence * 10));
    return found.strength > 0.75 ? 'X' : found.strength < 0.4 ? 'o' : 'x';
  });
}

function foldLine(fold: Fold): string {
  const swing =
    fold.swing.ratio === 1 ? 'straight' : `${fold.swing.level}s ${fold.swing.ratio.toFixed(2)}:1`;
  const gains = fold.periods.map(({ bars, gain }) => `${bars}: ${gain.toFixed(1)}`).join('  ');
  return [
    `${formatMeter(fold.meter)}, ${fold.bars} bar(s), ${swing}`,
    `${fold.barsAgreeing} of ${fold.agreement.length} bars agree`,
    `spread ${fold.spread.toFixed(0)}, latency ${fold.latency.toFixed(0)} ticks`,
    `${(100 * fold.offGrid).toFixed(0)} % off the grid`,
    `period gains ${gains}`,
  ].join('; ');
}

function report(name: string, bars: string, { pattern, fold }: Proposal, ms: number): string {
  const steps = patternSteps(pattern);
  const [right, rightTouch] = handLines(steps, pattern.right);
  const [left, leftTouch] = handLines(steps, pattern.left);
  const lines: [string, string][] = [
    ['right', right],
    ['', rightTouch],
    ['left', left],
    ['', leftTouch],
    ...fold.sources.map((source): [string, string] => [source.id, sourceLine(steps, source)]),
  ];
  return [
    `\n${name}, bars ${bars} (${ms.toFixed(0)} ms)`,
    foldLine(fold),
    ...lines.map(([label, line]) => label.padEnd(14) + line),
  ].join('\n');
}

const FILES = existsSync(REAL) ? readdirSync(REAL).filter((file) => file.endsWith('.mid')) : [];

it.each(FILES)('folds %s', (file) => {
  const opened = openBand(readFileSync(join(REAL, file)));
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const { band, choice } = opened.value;
  const start = performance.now();
  const proposal = proposePattern(band, choice, { id: file, name: file });
  const ms = performance.now() - start;
  if (!proposal.ok) throw new Error(JSON.stringify(proposal.error));
  const bars = `${choice.firstBar + 1}–${choice.lastBar + 1} of ${band.bars.length}`;
  console.log(report(file, bars, proposal.value, ms));
  expect(proposal.value.pattern.left.length + proposal.value.pattern.right.length).toBeGreaterThan(
    0,
  );
});

it('opens ten minutes of MIDI and proposes a pattern of all of it', () => {
  const times = 275;
  const drum = (key: number, text: string) =>
    gridNotes(text, 120, { key, channel: 9, length: 30, times });
  const bytes = midiFile({
    tracks: [
      [program(0, 33), ...gridNotes('x..x ..x. .x.. x.x.', 120, { key: 33, length: 100, times })],
      [
        program(1, 25),
        ...gridNotes('x.x. x.x. x.x. x.x.', 120, { channel: 1, key: 57, length: 200, times }),
      ],
      [
        ...drum(36, 'x..x .... ..x. .x..'),
        ...drum(38, '.... X..o .o.. X..o'),
        ...drum(42, 'xoxo xoxo xoxo xoxo'),
      ],
    ],
  });
  const start = performance.now();
  const opened = openBand(bytes);
  const read = performance.now();
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const { band, choice } = opened.value;
  const whole = { ...choice, firstBar: 0, lastBar: band.bars.length - 1 };
  const proposal = proposePattern(band, whole, { id: 'long', name: 'Long' });
  const proposed = performance.now();
  const notes = band.tracks.reduce((sum, track) => sum + track.notes.length, 0);
  console.log(
    `\n${band.bars.length} bars of MIDI, ${bytes.length} bytes, ${notes} notes: open ` +
      `${(read - start).toFixed(0)} ms, fold and derive all bars ${(proposed - read).toFixed(0)} ms`,
  );
  expect(proposal.ok).toBe(true);
});

it('folds ten minutes of an uneven band', () => {
  const funk = groove('4/4', {
    bass: 'x..x ..x. .x.. x.x.',
    kick: 'x..x .... ..x. .x..',
    snare: '.... X..o .o.. X..o',
    'hi-hat': 'xoxo xoxo xoxo xoxo',
    strumming: '..x. .x.. ..x. .x.x',
  });
  const minutes = 10;
  const bars = Math.round((minutes * UNEVEN.bpm) / 4);
  const { strokes, beats } = playGroove(funk, { ...UNEVEN, bars }, seededRandom(1));
  const start = performance.now();
  const fold = foldStrokes(strokes, beats, funk.meter);
  const folded = performance.now();
  const { sources } = grooveOf(fold);
  const hands = deriveHands(sources);
  const derived = performance.now();
  console.log(
    `\n${bars} bars, ${strokes.length} strokes: fold ${(folded - start).toFixed(0)} ms, ` +
      `hands ${(derived - folded).toFixed(1)} ms`,
  );
  console.log(foldLine(fold));
  expect(hands.left.length).toBeGreaterThan(0);
});
