import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { sectionHands } from '../../../src/core/voicing/sectionHands.ts';
import { setEntryEnding } from '../../../src/state/edits/ending.ts';
import { HandsPage } from '../../../src/ui/hands/HandsPage.tsx';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { otherEnding, section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

const verse = section('verse', { name: 'Verse', slots: slots('| C | F | G | C |') });
const bridge = section('bridge', { name: 'Bridge', wash: 'plum', slots: slots('| Am | N.C. |') });

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('main');
  document.body.replaceChildren(place);
  parts = pageParts(project({ song: song([verse, bridge], 'verse bridge') }));
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <HandsPage />
    </PartsContext>,
  );
  await expect.element(page.getByRole('img').first()).toBeVisible();
});

afterEach(() => root.unmount());

const button = (name: string) => page.getByRole('button', { name, exact: true }).first();
const total = () => page.getByRole('status');

function slotNow(place: number) {
  return parts.store.snapshot().song.sections[0]!.slots[place]!;
}

// Least total motion of a round C F G C: reference tables of least movement, common tones kept.
it('shows the hands of every chord, and how far they move in a round', async () => {
  expect(page.getByRole('img').elements()).toHaveLength(4);
  await expect.element(total()).toHaveTextContent('12 semitones in one round');
  await expect.element(total()).toHaveTextContent(/\d+ in root position/);
});

it('takes the next inversion and pins it; letting it go brings back the least motion', async () => {
  await button('Pin C').click();
  await button('F: next inversion up').click();
  expect(slotNow(1).fixedKeys).toBeDefined();
  await expect.element(total()).toHaveTextContent('12 before the last change');
  await button('F is pinned: let it go').click();
  await button('C is pinned: let it go').click();
  expect(slotNow(1).fixedKeys).toBeUndefined();
  await expect.element(total()).toHaveTextContent('12 semitones in one round');
});

it('pins the hands as they are, and undo lets them go', async () => {
  await button('Pin G').click();
  expect(slotNow(2).fixedKeys?.right).toHaveLength(3);
  parts.store.undo();
  expect(slotNow(2).fixedKeys).toBeUndefined();
});

it('lets single keys be chosen on a large keyboard', async () => {
  await button('C: choose its keys').click();
  await page.getByRole('button', { name: 'D5', exact: true }).click();
  expect(slotNow(0).fixedKeys?.right).toContain(74);
  await page.getByRole('button', { name: 'D5', exact: true }).click();
  expect(slotNow(0).fixedKeys?.right).not.toContain(74);
});

it('names the chord that no hands reach, and what to change', async () => {
  await button('Ranges').click();
  await page.getByRole('combobox', { name: 'Right from' }).selectOptions('G5');
  await expect.element(page.getByRole('alert')).toHaveTextContent(/^No two hands reach C as set/);
  parts.store.undo();
  await expect.element(page.getByRole('img').first()).toBeVisible();
});

it('changes what the hands may do', async () => {
  await page.getByRole('combobox', { name: 'Left hand' }).selectOptions('octave');
  await page.getByRole('combobox', { name: 'A hand reaches' }).selectOptions('tenth');
  expect(parts.store.snapshot().voicing).toMatchObject({ bass: 'octave', spanSemitones: 16 });
});

it('goes to another section, where no chord leaves both hands free', async () => {
  await button('Bridge').click();
  await expect.element(page.getByText('Both hands are free.')).toBeVisible();
});

it('shows, pins and nudges the hands of a playing that ends otherwise', async () => {
  parts.store.edit(setEntryEnding('entry 0', otherEnding(1, '| E7 Am |')), { label: 'ending' });
  const ending = page.getByRole('region', { name: 'Ending of Verse' });
  await expect.element(ending.getByRole('img').nth(1)).toBeVisible();
  await ending.getByRole('button', { name: 'E7: next inversion up' }).click();
  const pinned = parts.store.snapshot().song.form[0]!.ending!.slots[0]!.fixedKeys;
  expect(pinned?.right.length).toBeGreaterThan(2);
  await ending.getByRole('button', { name: 'E7 is pinned: let it go' }).click();
  expect(parts.store.snapshot().song.form[0]!.ending!.slots[0]!.fixedKeys).toBeUndefined();
});

it('leaves out chords that no playing plays, as every playing ends otherwise', async () => {
  parts.store.edit(setEntryEnding('entry 0', otherEnding(2, '| Am | Am |')), { label: 'ending' });
  await expect.element(button('F: choose its keys')).toBeVisible();
  expect(page.getByRole('button', { name: 'G: choose its keys' }).elements()).toEqual([]);
});

it('finds the hands of a very long section beside the page, and those around a pin anew', async () => {
  const long = section('verse', {
    name: 'Verse',
    slots: slots(`|${' C | F | G | Am |'.repeat(30)}`),
  });
  parts.store.edit(
    (before) => ({ ...before, song: { ...before.song, sections: [long, bridge] } }),
    {
      label: 'long',
    },
  );
  await expect.element(page.getByRole('button', { name: 'Pin C' }).nth(29)).toBeInTheDocument();
  const least = sectionHands({ chords: long.slots, settings: parts.store.snapshot().voicing });
  const found = least.ok ? least.value.motions.here : undefined;
  await expect.element(total()).toHaveTextContent(`Right hand: ${found} semitones`);
  await button('C: next inversion up').click();
  await expect.element(total()).toHaveTextContent(`${found} before the last change`);
});

it('has no fault that an accessibility scan finds', async () => {
  await button('C: choose its keys').click();
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
