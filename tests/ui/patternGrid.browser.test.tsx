import '../../src/ui/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Pattern } from '../../src/core/rhythm/pattern.ts';
import { type Parts, PartsContext } from '../../src/ui/parts.ts';
import { RhythmPage } from '../../src/ui/patternGrid/RhythmPage.tsx';
import { pageParts } from '../support/pageParts.ts';
import { pattern, source } from '../support/patterns.ts';
import { project } from '../support/project.ts';

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

/** A mouse pressed on one cell, moved and let go over another, `inset` pixels from their left edges. */
function drag(from: HTMLElement, to: HTMLElement, inset: number): void {
  const at = (element: HTMLElement) => {
    const { left, top, height } = element.getBoundingClientRect();
    return { clientX: left + inset, clientY: top + height / 2, bubbles: true, pointerId: 1 };
  };
  const kind = { pointerType: 'mouse', button: 0, isPrimary: true };
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

it('pulls a stroke of the band into a hand by a drag and by a key', async () => {
  drag(elementOf('snare, beat 3: strong'), elementOf('Left hand, beat 4: empty'), 8);
  expect(now().left.at(-1)).toMatchObject({ at: 960, play: ['fifth'] });
  elementOf('snare, beat 3: strong').focus();
  await userEvent.keyboard('r');
  expect(now().right.at(-1)).toMatchObject({ at: 960, play: ['all'] });
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

it('plays the pattern with the band alone, the hands alone, or both', async () => {
  await page.getByRole('group', { name: 'Hear' }).getByRole('button', { name: 'Band' }).click();
  expect(parts.store.snapshot().practice).toMatchObject({ hands: 'none', band: true });
  expect(parts.playback.state()).toMatchObject({ request: { kind: 'pattern', patternId: 'p' } });
  await page.getByRole('group', { name: 'Hear' }).getByRole('button', { name: 'Both' }).click();
  expect(parts.store.snapshot().practice).toMatchObject({ hands: 'both', band: true });
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
