import '../../../src/ui/kit/theme.css';
import '../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Parts } from '../../../src/ui/parts/tool/parts.ts';
import type { ViewChange } from '../../../src/ui/parts/tool/viewState.ts';
import { App } from '../../../src/ui/shell/App.tsx';
import { section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { PRACTICE, project } from '../../support/project.ts';
import { soundingPlayback } from '../../support/soundingParts.ts';

function named(id: string, name: string, chart: string) {
  return section(id, { name, slots: slots(chart), patternId: 'p' });
}

/** Three sections of four bars, each bar 1 s long, without a count-in. */
function threeSections() {
  const sections = [
    named('a', 'Verse', '| C | F | G | C |'),
    named('b', 'Chorus', '| Am | F | D | G |'),
    named('c', 'Bridge', '| Em | A | D | G |'),
  ];
  return project({
    song: song(sections, 'a b c a', { tempo: { bpm: 240, beatTicks: 480 } }),
    practice: { ...PRACTICE, click: { ...PRACTICE.click, countInBars: 0 } },
  });
}

let root: Root;
let parts: Parts;

/** The app on Play or Drill, with real sound. */
async function open(view: ViewChange): Promise<void> {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const silent = pageParts(threeSections(), view);
  const playback = soundingPlayback(silent.store);
  parts = { ...silent, playback };
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(button('Start', page.getByRole('contentinfo'))).toBeVisible();
}

beforeEach(() => open({ page: 'play' }));

afterEach(() => {
  parts.playback.stop();
  root.unmount();
});

function button(name: string, within: Pick<typeof page, 'getByRole'> = page) {
  return within.getByRole('button', { name, exact: true });
}

const foot = (name: string) => button(name, page.getByRole('contentinfo'));
const block = (name: string) =>
  button(name, page.getByRole('list', { name: 'Sections in playing order' }));
const sectionShown = () =>
  expect.poll(() => document.querySelector('.practice-section')?.textContent, { timeout: 5000 });
const isPlaying = () => expect.poll(() => parts.playback.state().status, { timeout: 20_000 });

it('goes to the section that is tapped at the next bar line, and says so until then', async () => {
  await foot('Start').click();
  await isPlaying().toBe('playing');
  await block('Bridge').click();
  await expect.element(page.getByText('then Bridge')).toBeVisible();
  await sectionShown().toBe('Bridge');
  await expect.element(page.getByText('then Bridge')).not.toBeInTheDocument();
  expect(parts.playback.state()).toMatchObject({ status: 'playing' });
});

it('shows all that one follows on a tablet, the pattern too, without scrolling', async () => {
  await foot('Start').click();
  await isPlaying().toBe('playing');
  await block('Bridge').click();
  await sectionShown().toBe('Bridge');
  const figure = document.querySelector<HTMLElement>('.practice-pattern-now')!;
  expect(figure.getBoundingClientRect().height).toBeGreaterThan(60);
  const main = document.querySelector('main')!;
  expect(main.scrollHeight).toBeLessThanOrEqual(main.clientHeight);
});

it('follows both kinds of page-turn pedal, and goes back to the start of a section', async () => {
  await foot('Start').click();
  await isPlaying().toBe('playing');
  (document.activeElement as HTMLElement).blur();
  await userEvent.keyboard('{PageDown}');
  await sectionShown().toBe('Chorus');
  await userEvent.keyboard('{ArrowRight}');
  await sectionShown().toBe('Bridge');
  await userEvent.keyboard('{ArrowLeft}');
  await sectionShown().toBe('Chorus');
  await userEvent.keyboard('{Home}');
  await expect.element(page.getByText('then Chorus')).toBeVisible();
  await userEvent.keyboard(' ');
  await isPlaying().toBe('stopped');
});

it('marks at rest what is played, and plays on to the end where that is wished', async () => {
  await block('Chorus').click();
  expect(parts.view.snapshot().range).toEqual({ firstBar: 4, endBar: 8 });
  await expect.element(page.getByRole('combobox', { name: 'What to play' })).toHaveValue('1');
  await sectionShown().toBe('Chorus');
  await button('On to the end').click();
  expect(parts.view.snapshot().range).toEqual({ firstBar: 4, endBar: 16 });
  await page.getByRole('combobox', { name: 'Play it' }).selectOptions('3 times');
  expect(parts.view.snapshot().times).toBe(3);
});

it('keeps the screen awake while it plays, and no longer', async () => {
  const released = vi.fn(async () => undefined);
  const lock = Object.assign(new EventTarget(), {
    released: false,
    type: 'screen',
    release: released,
  });
  const request = vi
    .spyOn(navigator.wakeLock, 'request')
    .mockResolvedValue(lock as unknown as WakeLockSentinel);
  await foot('Start').click();
  await isPlaying().toBe('playing');
  await expect.poll(() => request.mock.calls.length).toBe(1);
  expect(released).not.toHaveBeenCalled();
  await foot('Stop').click();
  await expect.poll(() => released.mock.calls.length).toBe(1);
  request.mockRestore();
});

it('suggests a rest after the minutes that are set, plays on, and never does so again where one says so', {
  timeout: 40_000,
}, async () => {
  parts.view.set({ restMinutes: 1 / 60 });
  await foot('Start').click();
  await expect
    .element(page.getByText('Rest your hands and ears'), { timeout: 20_000 })
    .toBeVisible();
  expect(parts.playback.state().status).toBe('playing');
  await button('Do not remind me').click();
  expect(parts.view.snapshot().restMinutes).toBe(0);
  await expect.element(page.getByText('Rest your hands and ears')).not.toBeInTheDocument();
});

it('leaves the arrow keys to the volume while that has the focus', async () => {
  const volume = page.getByRole('slider', { name: 'Volume' });
  (volume.element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowRight}');
  expect(parts.view.snapshot().volumes.master).toBeGreaterThan(0.5);
  expect(parts.view.snapshot().range).toBeUndefined();
});

it('sets how loud each part is, and puts the click into one ear', async () => {
  await foot('Mix').click();
  const mix = page.getByRole('dialog', { name: 'Mix' });
  (mix.getByRole('slider', { name: 'Left hand' }).element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(parts.view.snapshot().volumes.left).toBeLessThan(0.9);
  expect(parts.view.snapshot().volumes.right).toBe(0.9);
  await mix.getByRole('radio', { name: 'right ear' }).click();
  expect(parts.view.snapshot().volumes.clickEar).toBe('right');
  expect(await violations()).toEqual([]);
});

it('drills a hard join on a ladder up to the song’s tempo', async () => {
  await button('Hard joins …').click();
  const sheet = page.getByRole('dialog', { name: 'Hard joins' });
  await button('Drill this join: Verse to Chorus', sheet).click();
  await expect.element(sheet).not.toBeInTheDocument();
  await isPlaying().toBe('playing');
  expect(parts.view.snapshot().page).toBe('drill');
  expect(parts.playback.state()).toMatchObject({
    request: { kind: 'drill', stage: { passage: { kind: 'join', from: 'a', to: 'b' } } },
    bpm: 144,
  });
  await expect.poll(() => parts.playback.position()?.bar, { timeout: 5000 }).toBe(3);
});

it('plans the time there is and starts a line of the plan at one tap', async () => {
  await button('Plan …').click();
  const sheet = page.getByRole('dialog', { name: 'A plan for the time I have' });
  await button('Minutes: 5 less', sheet).click();
  expect(parts.view.snapshot().plan.minutes).toBe(10);
  await sheet.getByRole('button', { name: /^Start: .*on one chord/ }).click();
  await isPlaying().toBe('playing');
  expect(parts.view.snapshot().page).toBe('drill');
  expect(parts.playback.state()).toMatchObject({ request: { kind: 'drill' } });
  const clock = page.getByRole('region', { name: 'Plan' });
  await expect.element(clock.getByText(/ left$/)).toBeVisible();
  await clock.getByRole('button', { name: /^Next: / }).click();
  expect(parts.view.snapshot().plan.line?.index).toBe((parts.view.snapshot().plan.next ?? 0) - 1);
  expect(await violations()).toEqual([]);
  await button('Leave the plan', clock).click();
  await expect.element(clock).not.toBeInTheDocument();
});

async function violations() {
  return (await axe.run(document.body, { rules: { region: { enabled: false } } })).violations;
}

it('has nothing that assistive technology could not use, on the page and in its sheets', async () => {
  expect(await violations()).toEqual([]);
  for (const name of ['Hard joins …', 'Plan …']) {
    await button(name).click();
    await expect.element(page.getByRole('dialog')).toBeVisible();
    expect(await violations()).toEqual([]);
    await button('Close', page.getByRole('dialog')).click();
  }
  await foot('Start').click();
  await isPlaying().toBe('playing');
  await block('Bridge').click();
  expect(await violations()).toEqual([]);
});
