import { expect, it } from 'vitest';
import type { Hit } from '../../../../src/core/rhythm/pattern.ts';
import { hitPiece, strokeShape } from '../../../../src/ui/parts/grid/hitShapes.ts';
import { systemsOf } from '../../../../src/ui/parts/grid/systemLayout.ts';
import type { ToneStroke } from '../../../../src/ui/parts/grid/zoneStrokes.ts';
import { meter } from '../../../support/music.ts';

const systems = systemsOf(
  { meter: meter('4/4'), bars: 2, divisions: Array.from({ length: 8 }, () => 4 as const) },
  984,
);
const hit: Hit = { at: 0, length: 480, play: ['root'], touch: 'plain', held: true };
const low: ToneStroke = { tone: 'root', top: 0, bottom: 28, tails: [] };
const chord: ToneStroke = { tone: 'all', top: 0, bottom: 90, tails: [75, 45, 15] };

function shapeOf(changes: Partial<Hit>, stroke: ToneStroke, word: string) {
  const changed = { ...hit, ...changes };
  return strokeShape(changed, hitPiece(systems[0]!, changed)!, stroke, word);
}

it('draws a hit over a system end in two pieces that share its length', () => {
  const over = { at: 1680, length: 480 };
  expect(systems.map((system) => hitPiece(system, over))).toMatchObject([
    { fromShare: 0, toShare: 0.5 },
    { fromShare: 0.5, toShare: 1 },
  ]);
});

it('draws no piece in a system where the hit does not sound', () => {
  expect(hitPiece(systems[1]!, { at: 0, length: 1920 })).toBeUndefined();
});

it('ends a short hit long before its step does, with a dot behind it', () => {
  const held = shapeOf({}, low, 'R');
  const short = shapeOf({ held: false }, low, 'R');
  expect(short.to).toBeLessThan(held.to);
  expect(short.dot).toBeGreaterThan(short.to);
  expect(held.dot).toBeUndefined();
});

it('makes room for the brackets of a ghost', () => {
  const ghost = shapeOf({ touch: 'ghost' }, low, 'R');
  const plain = shapeOf({}, low, 'R');
  expect([ghost.from, ghost.to]).toEqual([plain.from + 7, plain.to - 7]);
});

it('writes a word along a stroke, turned up in a tall one, and behind one that is too small', () => {
  expect(shapeOf({}, low, 'R').word).toMatchObject({ turned: false, outside: false });
  expect(shapeOf({}, chord, 'chord').word).toMatchObject({ turned: true, outside: false });
  expect(shapeOf({ held: false }, low, 'mid').word).toMatchObject({ outside: true });
});
