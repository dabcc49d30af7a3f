import '../../../src/ui/kit/theme.css';
import '../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { createMidiDoor } from '../../../src/app/midiDoor.ts';
import { withLatency } from '../../../src/ui/parts/takes/latencies.ts';
import type { Parts } from '../../../src/ui/parts/tool/parts.ts';
import type { ViewChange } from '../../../src/ui/parts/tool/viewState.ts';
import { App } from '../../../src/ui/shell/App.tsx';
import { playExactly } from '../../support/exactPlayer.ts';
import { pageParts } from '../../support/pageParts.ts';
import { PRACTICE, project } from '../../support/project.ts';
import { hearingParts, openSound, soundingPlayback } from '../../support/soundingParts.ts';

/** One bar to a rung, 120, 126 and 132, without a count-in; a rung that is not clean leads one down. */
function shortLadder() {
  const { ladder } = PRACTICE.drill;
  return project({
    practice: {
      ...PRACTICE,
      hands: 'none',
      click: { ...PRACTICE.click, countInBars: 0 },
      drill: {
        ...PRACTICE.drill,
        ladder: {
          ...ladder,
          startBpm: 120,
          goalBpm: 132,
          passesPerRung: 1,
          climb: 'when-clean',
          fallBackAfter: 1,
        },
      },
    },
  });
}

let root: Root;
let parts: Parts;

/** The app on Drill with real sound and what hears the player. */
async function open(heard: ViewChange['hearing']): Promise<void> {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const silent = pageParts(shortLadder(), { page: 'drill', hearing: heard });
  const { store, view } = silent;
  const playback = soundingPlayback(store);
  const sounding = { ...silent, playback };
  parts = {
    ...sounding,
    ...hearingParts(sounding, {
      openMidi: createMidiDoor({
        taught: () => ({}),
        request: async () => {
          throw new DOMException('not allowed', 'NotAllowedError');
        },
      }).openPlayed,
      onMeasured: (kind, sec) => view.set(withLatency(view.snapshot(), kind, 1000 * sec)),
    }),
  };
  root = createRoot(place);
  root.render(<App parts={parts} />);
  await expect.element(foot('Start')).toBeVisible();
}

afterEach(() => {
  parts.playback.stop();
  root.unmount();
});

function foot(name: string) {
  return page.getByRole('contentinfo').getByRole('button', { name, exact: true });
}

it('climbs two rungs that are played clean on two keys, and falls back from one that is not', async () => {
  await open({ input: 'keys', latencyMs: {} });
  const rungs: number[] = [];
  const stopWatching = parts.playback.subscribe(() => {
    const now = parts.playback.state();
    const rung = now.status === 'playing' ? now.drill?.rung : undefined;
    if (rung !== undefined && rung !== rungs.at(-1)) rungs.push(rung);
  });
  const stopPlaying = await playExactly(parts.playback, openSound, (rung) => rung === 2);
  await foot('Start').click();
  const told: string[] = [];
  const stopReading = parts.playingTakes.subscribe(() => {
    const { bpm, score } = parts.playingTakes.state().result ?? {};
    if (bpm !== undefined) told.push(`${bpm} ${score?.clean ? 'clean' : 'not clean'}`);
  });
  await expect.poll(() => told, { timeout: 15_000 }).toHaveLength(3);
  await expect.element(page.getByRole('heading', { name: 'How 132 went' })).toBeVisible();
  await expect.element(page.getByText('Your right hand leaves notes out.')).toBeVisible();
  expect(told).toEqual(['120 clean', '126 clean', '132 not clean']);
  expect(rungs).toEqual([1, 2, 3, 2]);
  expect(document.querySelectorAll('.takes-mark').length).toBeGreaterThan(0);
  stopPlaying();
  await foot('Stop').click();
  await expect.element(page.getByRole('heading', { name: 'How it went' })).toBeVisible();
  expect(
    (await axe.run(document.body, { rules: { region: { enabled: false } } })).violations,
  ).toEqual([]);
  stopWatching();
  stopReading();
});

it('shows two pads while they are chosen, and hears them', async () => {
  await open({ input: 'nothing', latencyMs: {} });
  await page.getByRole('combobox', { name: 'Heard by' }).selectOptions('two touch pads');
  await foot('Start').click();
  await expect.poll(() => parts.takes.live()?.pass.passIndex, { timeout: 5000 }).toBe(0);
  const pad = page.getByRole('button', { name: 'Left hand', exact: true });
  await pad.click();
  await expect.poll(() => document.querySelector('.takes-mark.takes-left')).not.toBeNull();
  await foot('Stop').click();
  await expect.element(page.getByRole('heading', { name: 'How it went' })).toBeVisible();
});

it('has room for pads over the buttons of the rungs, also at a tempo of three figures and in a plan', async () => {
  await open({ input: 'pads', latencyMs: {} });
  parts.view.set({ plan: { minutes: 15, next: 1, line: { index: 0, begunAtMs: Date.now() } } });
  await expect.element(page.getByRole('region', { name: 'Plan' })).toBeVisible();
  const pad = page.getByRole('button', { name: 'Left hand', exact: true });
  const rungUp = page.getByRole('button', { name: 'Rung up' });
  const edges = () => {
    const [above, below] = [pad, rungUp].map((each) => each.element().getBoundingClientRect());
    return { room: below!.top - above!.bottom, tall: above!.height };
  };
  await expect.poll(() => edges().room).toBeGreaterThanOrEqual(0);
  expect(edges().tall).toBeGreaterThanOrEqual(60);
  const stand = document.querySelector('.practice-stand')!;
  expect(stand.scrollHeight).toBeLessThanOrEqual(stand.clientHeight);
});

it('says what to do where the browser was not allowed to use MIDI', async () => {
  await open({ input: 'nothing', latencyMs: {} });
  await page.getByRole('combobox', { name: 'Heard by' }).selectOptions('a MIDI keyboard');
  await expect.element(page.getByText('The browser was not allowed to use MIDI.')).toBeVisible();
  await page.getByRole('combobox', { name: 'Heard by' }).selectOptions('nothing: not measured');
  await expect.element(page.getByText('The browser was not allowed')).not.toBeInTheDocument();
});

it('lets the tool play the hand that I do not, in the drill alone', async () => {
  await open({ input: 'keys', latencyMs: {} });
  const before = parts.store.snapshot().practice.hands;
  const hands = page.getByRole('group', { name: 'Hands I play' });
  await hands.getByRole('button', { name: 'Left' }).click();
  expect(parts.store.snapshot().practice.drill.hands).toBe('right');
  await expect.element(page.getByText('The tool plays the right hand.')).toBeVisible();
  await hands.getByRole('button', { name: 'Both' }).click();
  expect(parts.store.snapshot().practice.drill.hands).toBe('none');
  expect(parts.store.snapshot().practice.hands).toBe(before);
});

it('keeps a latency that is set by hand, on this device', async () => {
  await open({ input: 'keys', latencyMs: {} });
  await page.getByRole('button', { name: 'Latency in ms: 5 more' }).click();
  expect(parts.view.snapshot().hearing.latencyMs.keys).toBe(5);
});

it('measures the latency until it is stopped, or music begins', async () => {
  await open({ input: 'keys', latencyMs: {} });
  const measure = page.getByRole('button', { name: 'Measure: play along for 16 beats' });
  await measure.click();
  await page.getByRole('button', { name: 'Stop measuring' }).click();
  await measure.click();
  await expect.element(page.getByText('then one hit on every click')).toBeVisible();
  await foot('Start').click();
  await expect.element(measure).toBeVisible();
  expect(parts.view.snapshot().hearing.latencyMs).toEqual({});
  expect(parts.latencyCheck.state()).toEqual({ status: 'idle' });
});

it('says why a latency could not be measured', async () => {
  await open({ input: 'midi', latencyMs: {} });
  await page.getByRole('button', { name: 'Measure: play along for 16 beats' }).click();
  await expect.element(page.getByText('The browser was not allowed to use MIDI.')).toBeVisible();
});

it('says that nobody hears whether a rung was clean, and lets the ladder fall back or alternate', async () => {
  await open({ input: 'nothing', latencyMs: {} });
  const ladder = () => parts.store.snapshot().practice.drill.ladder;
  await expect.element(page.getByText('choose what hears you')).toBeInTheDocument();
  await page.getByRole('combobox', { name: 'Heard by' }).selectOptions('two computer keys');
  await expect.element(page.getByText('choose what hears you')).not.toBeInTheDocument();
  await page.getByText('How it climbs:').click();
  const fallBack = page.getByRole('combobox', { name: 'Fall back' });
  await fallBack.selectOptions('after two not clean');
  expect(ladder().fallBackAfter).toBe(2);
  await fallBack.selectOptions('never');
  expect(ladder().fallBackAfter).toBeUndefined();
  await page
    .getByRole('combobox', { name: 'Order' })
    .selectOptions('this rung and the goal in turn');
  expect(ladder().order).toBe('alternating');
  await page.getByRole('combobox', { name: 'Climb' }).selectOptions('when I say so (Page Down)');
  await expect.element(fallBack).not.toBeInTheDocument();
});
