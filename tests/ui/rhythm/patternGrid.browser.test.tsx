import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { RhythmPage } from '../../../src/ui/rhythm/RhythmPage.tsx';
import { pageParts } from '../../support/pageParts.ts';
import { pattern, source } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const plain = pattern('4/4', { left: 'R.......', right: '..C.....' });
const withBand = { ...plain, sources: [source(plain, 'snare', '....x...')] };

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  place.style.height = '600px';
  document.body.replaceChildren(place);
  parts = pageParts(project({ patterns: [withBand] }));
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <RhythmPage />
    </PartsContext>,
  );
  await expect.element(page.getByRole('grid')).toBeVisible();
});

afterEach(() => root.unmount());

/** The pattern as it is now. */
function now(): Pattern {
  return parts.store.snapshot().patterns[0]!;
}

function cell(name: string) {
  return page.getByRole('gridcell', { name });
}

function elementOf(name: string): HTMLElement {
  return cell(name).element() as HTMLElement;
}

/** How a drag is made: which pointer, which button, how far above the middle of the first cell it comes down. */
type Manner = {
  readonly pointerType?: 'mouse' | 'touch' | 'pen';
  readonly button?: number;
  readonly shiftKey?: boolean;
  readonly above?: number;
};

/** A pointer pressed on one cell, moved and let go over another, `inset` pixels from their left edges. */
function drag(from: HTMLElement, to: HTMLElement, inset: number, manner: Manner = {}): void {
  const { above = 0, ...pressed } = manner;
  const at = (element: HTMLElement) => {
    const { left, top, height } = element.getBoundingClientRect();
    const clientY = top + height / 2 - (element === from ? above : 0);
    return { clientX: left + inset, clientY, bubbles: true, pointerId: 1 };
  };
  const kind = { pointerType: 'mouse', button: 0, isPrimary: true, ...pressed };
  from.dispatchEvent(new PointerEvent('pointerdown', { ...at(from), ...kind }));
  for (const end of [from, to])
    end.dispatchEvent(new PointerEvent('pointermove', { ...at(end), ...kind }));
  to.dispatchEvent(new PointerEvent('pointerup', { ...at(to), ...kind }));
}

it('adds a hit where an empty place is tapped, and takes it back as one change', async () => {
  await cell('Left hand, beat 3: empty').click();
  expect(now().left.map(({ at, length, play }) => [at, length, play])).toEqual([
    [0, 240, ['root']],
    [960, 240, ['root']],
  ]);
  parts.store.undo();
  expect(now()).toEqual(withBand);
});

it('changes the tapped hit by the buttons under the grid', async () => {
  await cell('Right hand, beat 2: chord').click();
  await page.getByRole('button', { name: 'top', exact: true }).click();
  await page.getByRole('button', { name: '> accent' }).click();
  await page.getByRole('button', { name: 'short ·' }).click();
  await page.getByRole('button', { name: 'longer' }).click();
  await page.getByRole('button', { name: 'later' }).click();
  await page.getByRole('button', { name: 'leads into next chord' }).click();
  expect(now().right).toEqual([
    { at: 720, length: 480, play: ['top'], touch: 'accent', held: false, anticipates: true },
  ]);
  await page.getByRole('button', { name: 'remove' }).click();
  expect(now().right).toEqual([]);
});

it('goes through the grid and changes hits by keys alone', async () => {
  elementOf('Right hand, beat 1: empty').focus();
  await userEvent.keyboard('{ArrowDown}{ArrowDown}{ArrowRight}{ArrowRight}5');
  expect(now().left.at(-1)).toMatchObject({ at: 480, play: ['fifth'] });
  await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}{Alt>}{ArrowRight}{/Alt}t');
  expect(now().left.at(-1)).toMatchObject({ at: 720, length: 480, touch: 'accent' });
  await userEvent.keyboard('{Delete}');
  expect(now().left).toHaveLength(1);
});

it('moves a hit by a drag as one change, and leaves what it only passes over', () => {
  drag(elementOf('Right hand, beat 2: chord'), elementOf('Right hand, beat 4: empty'), 8);
  expect(now().right.map(({ at }) => at)).toEqual([1440]);
  expect(parts.store.undoLabel()).toBe('move hit');
  parts.store.undo();
  expect(now()).toEqual(withBand);
});

it.each(['mouse', 'touch'] as const)(
  'ties the last hit over the end by a drag beyond the last line with a %s, and draws it in by its tie',
  async (pointerType) => {
    const last = elementOf('Right hand, 4 and: empty');
    await cell('Right hand, 4 and: empty').click();
    const before = now();
    const { right, top, height } = last.getBoundingClientRect();
    const at = (clientX: number) => ({
      clientX,
      clientY: top + height / 2,
      bubbles: true,
      pointerId: 1,
      pointerType,
      button: 0,
      isPrimary: true,
    });
    last.dispatchEvent(new PointerEvent('pointerdown', at(right - 5)));
    for (const clientX of [right + 5, right + 30])
      last.dispatchEvent(new PointerEvent('pointermove', at(clientX)));
    last.dispatchEvent(new PointerEvent('pointerup', at(right + 30)));
    expect(now().right.at(-1)).toMatchObject({ at: 1680, length: 240 + 480 });
    expect(parts.store.undoLabel()).toBe('length of hit');
    await expect.element(cell('Right hand, 1 and: tied over from the end')).toBeVisible();
    const tie = elementOf('Right hand, 1 and: tied over from the end: chord');
    drag(tie, elementOf('Right hand, beat 1: tied over from the end: chord'), tie.offsetWidth - 5, {
      pointerType,
    });
    expect(now().right.at(-1)).toMatchObject({ at: 1680, length: 240 + 240 });
    parts.store.undo();
    parts.store.undo();
    expect(now()).toEqual(before);
  },
);

it('pulls a stroke of the band into a hand by a drag and by a key', async () => {
  drag(elementOf('snare, beat 3: strong'), elementOf('Left hand, beat 4: empty'), 8);
  expect(now().left.at(-1)).toMatchObject({ at: 960, play: ['fifth'] });
  elementOf('snare, beat 3: strong').focus();
  await userEvent.keyboard('r');
  expect(now().right.at(-1)).toMatchObject({ at: 960, play: ['all'] });
});

it('pulls a stroke into a hand by a finger that comes down a little beside its low lane', () => {
  const lane = elementOf('snare, beat 3: strong');
  const outside = lane.offsetHeight / 2 + 10;
  drag(lane, elementOf('Left hand, beat 4: empty'), 8, { pointerType: 'touch', above: outside });
  expect(now().left.at(-1)).toMatchObject({ at: 960, play: ['fifth'] });
  parts.store.undo();
  const inHand = elementOf('Right hand, beat 3: empty');
  const overLane = inHand.offsetHeight / 2 - 6;
  drag(inHand, elementOf('Left hand, beat 4: empty'), 8, { pointerType: 'touch', above: overLane });
  expect(now().left.at(-1)).toMatchObject({ at: 960, play: ['fifth'] });
  expect(now().right).toEqual(withBand.right);
});

it.each(['mouse', 'touch', 'pen'] as const)(
  'draws hits across a hand with a %s, one on every step that rests, as one change',
  (pointerType) => {
    const from = elementOf('Right hand, beat 1: empty');
    drag(from, elementOf('Right hand, beat 4: empty'), 8, { pointerType });
    expect(now().right.map(({ at }) => at)).toEqual([0, 240, 480, 720, 960, 1200, 1440]);
    expect(now().right[2]).toBe(withBand.right[0]);
    parts.store.undo();
    expect(now()).toEqual(withBand);
  },
);

it('takes back what is drawn where the pen goes back, and draws one long hit with Shift', () => {
  const [from, over] = [
    elementOf('Left hand, beat 2: empty'),
    elementOf('Left hand, beat 4: empty'),
  ];
  const send = (type: string, on: HTMLElement) => {
    const { left, top } = on.getBoundingClientRect();
    const at = { clientX: left + 8, clientY: top + 30, bubbles: true, pointerId: 1 };
    from.dispatchEvent(new PointerEvent(type, { ...at, pointerType: 'pen', button: 0 }));
  };
  send('pointerdown', from);
  send('pointermove', over);
  expect(now().left).toHaveLength(6);
  send('pointermove', from);
  send('pointerup', from);
  expect(now().left.map(({ at }) => at)).toEqual([0, 480]);
  parts.store.undo();
  drag(from, over, 2, { shiftKey: true });
  expect(now().left.at(-1)).toMatchObject({ at: 480, length: 960 });
});

it('rubs hits out with the second button, as one change', () => {
  const from = elementOf('Right hand, beat 1: empty');
  drag(from, elementOf('Right hand, beat 4: empty'), 8, { button: 2 });
  expect(now().right).toEqual([]);
  parts.store.undo();
  expect(now()).toEqual(withBand);
});

it('leaves a finger that only scrolls without a trace', () => {
  const from = elementOf('Right hand, beat 1: empty');
  const { left, top } = from.getBoundingClientRect();
  const at = { clientX: left + 8, clientY: top + 30, bubbles: true, pointerId: 1 };
  const finger = { ...at, pointerType: 'touch', button: 0 };
  from.dispatchEvent(new PointerEvent('pointerdown', finger));
  from.dispatchEvent(new PointerEvent('pointermove', { ...finger, clientY: top + 50 }));
  from.dispatchEvent(new PointerEvent('pointercancel', finger));
  expect(now()).toEqual(withBand);
  expect(getComputedStyle(from).touchAction).toBe('pan-y');
  expect(getComputedStyle(elementOf('snare, beat 3: strong')).touchAction).toBe('none');
});

it('repeats a hit by a key, and again, and writes it once more on an empty place', async () => {
  elementOf('Right hand, beat 2: chord').focus();
  await userEvent.keyboard('9aa{ArrowRight}{ArrowRight}a');
  expect(now().right.map(({ at, play }) => [at, play[0]])).toEqual([
    [480, 'top'],
    [720, 'top'],
    [960, 'top'],
    [1440, 'top'],
  ]);
});

it('divides a beat from the menu at its number', async () => {
  await cell('Beat 2, in halves').click();
  await page.getByRole('menuitemradio', { name: 'in three' }).click();
  expect(now().divisions).toEqual([2, 3, 2, 2]);
  await expect.element(cell('Beat 2, in three')).toHaveFocus();
});

it('makes, names and removes patterns', async () => {
  await page.getByRole('button', { name: 'Patterns' }).click();
  await page.getByRole('button', { name: 'Empty' }).click();
  await page.getByRole('textbox', { name: 'Name of the pattern' }).fill('Mine');
  expect(parts.store.snapshot().patterns.map(({ name }) => name)).toEqual(['Pattern', 'Mine']);
  await page.getByRole('button', { name: 'Patterns' }).click();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect
    .element(page.getByRole('textbox', { name: 'Name of the pattern' }))
    .toHaveValue('Pattern');
});

it('plays the pattern with the pedal or without, as one change', async () => {
  await page
    .getByRole('button', { name: 'Pedal, changed with each chord', pressed: false })
    .click();
  expect(now().pedal).toBe('by-chord');
  await page.getByRole('button', { name: 'Pedal, changed with each chord', pressed: true }).click();
  expect(now()).toEqual(withBand);
  parts.store.undo();
  expect(now().pedal).toBe('by-chord');
});

it('plays the pattern with the band alone, a hand alone, or both', async () => {
  await page.getByRole('button', { name: 'Band alone' }).click();
  expect(parts.store.snapshot().practice).toMatchObject({ hands: 'none', band: true });
  expect(parts.playback.state()).toMatchObject({ request: { kind: 'pattern', patternId: 'p' } });
  await page.getByRole('button', { name: 'Left hand alone' }).click();
  expect(parts.store.snapshot().practice).toMatchObject({ hands: 'left', band: false });
  await page.getByRole('button', { name: 'Both, band and hands' }).click();
  expect(parts.store.snapshot().practice).toMatchObject({ hands: 'both', band: true });
});

it('goes over to the progression of a section while it plays, and back to the chord', async () => {
  await page.getByRole('button', { name: 'Hands alone' }).click();
  const on = page.getByRole('combobox', { name: 'Heard on' });
  await on.selectOptions('on verse');
  expect(parts.view.snapshot().heardOver).toBe('verse');
  expect(parts.playback.state()).toMatchObject({ request: { over: 'verse' } });
  await expect.element(page.getByRole('textbox', { name: 'Chord' })).not.toBeInTheDocument();
  await on.selectOptions('on a chord');
  expect(parts.view.snapshot().heardOver).toBeUndefined();
});

it('shows the ending as a bar of its own, which is changed apart from the bars', async () => {
  await page.getByRole('button', { name: 'Add an ending' }).click();
  await cell('Left hand, beat 3: empty').click();
  expect(now().ending?.left).toHaveLength(2);
  expect(now().left).toHaveLength(1);
});

it('has no fault that an accessibility scan finds', async () => {
  await cell('Right hand, beat 2: chord').click();
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
