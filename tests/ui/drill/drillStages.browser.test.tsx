import '../../../src/ui/kit/theme.css';
import '../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Parts } from '../../../src/ui/parts/tool/parts.ts';
import { App } from '../../../src/ui/shell/App.tsx';
import { section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { pattern } from '../../support/patterns.ts';
import { PRACTICE, project } from '../../support/project.ts';
import { soundingPlayback } from '../../support/soundingParts.ts';

/** Verse and chorus with one pattern; a drill of two rungs that is climbed by hand, its passes 0.75 and 1 s long. */
function twoSections() {
  const [verse, chorus] = [
    section('a', { name: 'Verse', slots: slots('| C | F |'), patternId: 'p' }),
    section('b', { name: 'Chorus', slots: slots('| Am | G |'), patternId: 'p' }),
  ];
  return project({
    song: song([verse, chorus], 'a b', { tempo: { bpm: 240, beatTicks: 480 } }),
    patterns: [pattern('4/4', { left: 'R-------', right: 'CCCCCCCC' })],
    practice: {
      ...PRACTICE,
      click: { ...PRACTICE.click, countInBars: 0 },
      drill: {
        ...PRACTICE.drill,
        ladder: {
          startBpm: 240,
          goalBpm: 320,
          step: { kind: 'bpm', bpm: 80 },
          passesPerRung: 1,
          climb: 'by-hand',
        },
      },
    },
  });
}

let root: Root;
let parts: Parts;

async function open(): Promise<void> {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const silent = pageParts(twoSections(), { page: 'drill' });
  const playback = soundingPlayback(silent.store);
  parts = { ...silent, playback };
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(foot('Start')).toBeVisible();
}

afterEach(() => {
  parts.playback.stop();
  root.unmount();
});

const foot = (name: string) =>
  page.getByRole('contentinfo').getByRole('button', { name, exact: true });
const step = (name: string | RegExp) =>
  page.getByRole('list', { name: 'Stages' }).getByRole('button', { name });
const pressedInFoot = () =>
  ['Left', 'Right'].filter((name) => foot(name).element().ariaPressed === 'true').join(' ');
const stages = () => parts.store.snapshot().practice.drill.stages;
const stageHere = () =>
  expect.poll(
    () => {
      const state = parts.playback.state();
      return state.status === 'playing' ? `${state.drill?.stage?.id} ${state.drill?.rung}` : '';
    },
    { timeout: 10_000 },
  );

async function violations() {
  return (await axe.run(document.body, { rules: { region: { enabled: false } } })).violations;
}

it('goes through rungs and stages and back with nothing but keys', async () => {
  await open();
  await step('Stage 1 Left hand alone').click();
  (document.activeElement as HTMLElement).blur();
  await userEvent.keyboard(' ');
  await stageHere().toMatch(/"one-chord" right full 1$/);
  expect(pressedInFoot()).toBe('Right');
  await userEvent.keyboard('{PageDown}');
  await stageHere().toMatch(/"one-chord" right full 2$/);
  await userEvent.keyboard('{PageDown}');
  await expect.element(page.getByText('then Right hand alone')).toBeVisible();
  await stageHere().toMatch(/"one-chord" left full 1$/);
  expect(pressedInFoot()).toBe('Left');
  await userEvent.keyboard('{PageUp}');
  await stageHere().toMatch(/"one-chord" right full 2$/);
  await userEvent.keyboard('-');
  await expect.element(page.getByText('2 slower, on this rung only')).toBeVisible();
  await userEvent.keyboard(' ');
  await expect.poll(() => parts.playback.state().status).toBe('stopped');
  await expect.element(step('Stage 1 Left hand alone')).toHaveAttribute('aria-current', 'step');
  expect(await violations()).toEqual([]);
});

it('plays a section with its chords in sight, and the foot changes its hands in the list', async () => {
  await open();
  await step(/^Stage \d Verse$/).click();
  await foot('Start').click();
  await expect
    .poll(() => document.querySelector('.practice-passage-now')?.textContent, { timeout: 10_000 })
    .toBe('F');
  await expect.poll(() => document.querySelector('.pattern-playhead[hidden]')).toBeNull();
  expect(document.querySelector('.pattern-playhead')).not.toBeNull();
  expect(pressedInFoot()).toBe('');
  await foot('Left').click();
  await expect.poll(pressedInFoot).toBe('Left');
  expect(stages()?.find(({ passage }) => passage.kind === 'section')?.tool).toBe('left');
  expect(parts.store.snapshot().practice.hands).toBe('both');
  expect(await violations()).toEqual([]);
});

it('lets the stages be changed, moved, removed and added, and proposes them again', async () => {
  await open();
  await page.getByRole('button', { name: 'Stages …' }).click();
  const sheet = page.getByRole('dialog', { name: 'Stages' });
  await sheet
    .getByRole('combobox', { name: 'Level of stage 1', exact: true })
    .selectOptions('level 1');
  expect(stages()?.[0]).toMatchObject({ passage: { kind: 'one-chord' }, level: 1 });
  await sheet.getByRole('button', { name: /^Later: stage 1,/ }).click();
  expect(stages()?.[1]).toMatchObject({ level: 1 });
  const before = stages()?.length ?? 0;
  await sheet.getByRole('button', { name: /^Remove stage 1,/ }).click();
  expect(stages()).toHaveLength(before - 1);
  await sheet.getByRole('button', { name: 'Add a stage' }).click();
  const what = sheet.getByRole('combobox', { name: `What stage ${before} goes through` });
  await what.selectOptions('Verse to Chorus');
  expect(stages()?.at(-1)).toMatchObject({ passage: { kind: 'join', from: 'a', to: 'b' } });
  expect(await violations()).toEqual([]);
  await sheet.getByRole('button', { name: 'Back to the proposal' }).click();
  expect(stages()).toBeUndefined();
});

it('says that a ladder whose start is above its goal is one tempo, and taps its ends', async () => {
  await open();
  const from = page.getByRole('spinbutton', { name: 'From' });
  await from.fill('320');
  await page.getByRole('spinbutton', { name: 'To', exact: true }).fill('100');
  await expect
    .element(page.getByText('From is above To, so there is one tempo only: 100.'))
    .toBeVisible();
  const tap = page.getByRole('button', { name: 'Tap the tempo: From' });
  for (const ms of [0, 500, 1000]) {
    const press = new PointerEvent('pointerdown', { bubbles: true });
    Object.defineProperty(press, 'timeStamp', { value: 10_000 + ms });
    tap.element().dispatchEvent(press);
  }
  expect(parts.store.snapshot().practice.drill.ladder.startBpm).toBe(120);
});
