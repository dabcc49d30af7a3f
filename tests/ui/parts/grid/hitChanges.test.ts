import { expect, it } from 'vitest';
import type { Project } from '../../../../src/core/project.ts';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import { type GridAction, gridActionOf } from '../../../../src/ui/parts/grid/gridKeys.ts';
import { hitChange, toneSwitched } from '../../../../src/ui/parts/grid/hitChanges.ts';
import { pattern } from '../../../support/patterns.ts';

const before = pattern('4/4', { left: 'R---5---', right: '..C...C-' });

/** The pattern after an action on a step of a hand; undefined where the action changes nothing. */
function after(hand: 'left' | 'right', column: number, action: GridAction): Pattern | undefined {
  const place = { patternId: before.id, scope: 'main' as const, shown: before, hand, column };
  const change = hitChange(place, action);
  return change?.edit({ patterns: [before] } as unknown as Project).patterns[0];
}

it('adds a hit of one step where a tone is pressed on an empty place', () => {
  const added = after('right', 0, { kind: 'tone', key: '9', how: 'only' });
  expect(added?.right[0]).toEqual({
    at: 0,
    length: 240,
    play: ['top'],
    touch: 'plain',
    held: true,
  });
});

it('changes nothing on an empty place by any other key', () => {
  expect(after('right', 0, { kind: 'touch' })).toBeUndefined();
  expect(after('right', 0, { kind: 'remove' })).toBeUndefined();
});

it('moves a hit by a step, also from a place that it lasts over', () => {
  expect(after('left', 2, { kind: 'move', by: 1 })?.left[0]).toMatchObject({ at: 240 });
  expect(after('left', 0, { kind: 'move', by: -1 })).toBeUndefined();
});

it('goes through ghost, plain and accent and round again', () => {
  expect(after('left', 0, { kind: 'touch' })?.left[0]?.touch).toBe('accent');
});

it('adds a tone to the bass or takes it away, and leaves the last one', () => {
  expect(after('left', 0, { kind: 'tone', key: '5', how: 'also' })?.left[0]?.play).toEqual([
    'root',
    'fifth',
  ]);
  expect(toneSwitched(['root', 'fifth'], 'fifth')).toEqual(['root']);
  expect(toneSwitched(['root'], 'root')).toEqual(['root']);
});

it('removes, shortens and draws out', () => {
  expect(after('right', 2, { kind: 'remove' })?.right).toHaveLength(1);
  expect(after('left', 0, { kind: 'lengthen', by: -1 })?.left[0]?.length).toBe(720);
  expect(after('right', 2, { kind: 'lengthen', by: 1 })?.right[0]?.length).toBe(480);
});

const NO_MODIFIERS = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

it.each([
  [
    { key: 'ArrowRight', code: 'ArrowRight' },
    { kind: 'go', columns: 1, rows: 0 },
  ],
  [
    { key: 'ArrowRight', code: 'ArrowRight', shiftKey: true },
    { kind: 'lengthen', by: 1 },
  ],
  [
    { key: 'ArrowLeft', code: 'ArrowLeft', altKey: true },
    { kind: 'move', by: -1 },
  ],
  [
    { key: 'End', code: 'End', ctrlKey: true },
    { kind: 'go-to', place: 'grid end' },
  ],
  [
    { key: '5', code: 'Digit5' },
    { kind: 'tone', key: '5', how: 'only' },
  ],
  [
    { key: '%', code: 'Digit5', shiftKey: true },
    { kind: 'tone', key: '5', how: 'also' },
  ],
  [{ key: 'T', code: 'KeyT' }, { kind: 'touch' }],
  [{ key: 'z', code: 'KeyZ', ctrlKey: true }, undefined],
  [{ key: '5', code: 'Digit5', ctrlKey: true }, undefined],
])('reads %o', (press, action) => {
  expect(gridActionOf({ ...NO_MODIFIERS, ...press })).toEqual(action);
});
