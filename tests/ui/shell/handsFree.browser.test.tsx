import '../../../src/ui/kit/theme.css';
import '../../../src/ui/shell/shell.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { createMidiDoor, type MidiDoor } from '../../../src/app/midiDoor.ts';
import { takeInputs } from '../../../src/app/takeInputs.ts';
import type { PlayedNote } from '../../../src/core/practice/playedHits.ts';
import { err } from '../../../src/core/result.ts';
import type { MidiAccess } from '../../../src/input/midiInput.ts';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import type { ViewChange } from '../../../src/ui/parts/tool/viewState.ts';
import { RhythmPage } from '../../../src/ui/rhythm/RhythmPage.tsx';
import { App } from '../../../src/ui/shell/App.tsx';
import { type FakePort, fakeMidi, fakePort } from '../../support/midiPort.ts';
import { section, slots, song, valueOf } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { pattern, ticksOf } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const SOFT_DOWN = [0xb0, 67, 127];
const SOFT_UP = [0xb0, 67, 0];
const TOP_KEY = [0x90, 108, 90];

let root: Root;
let parts: Parts;
let piano: FakePort;
let access: MidiAccess;
let door: MidiDoor;
let nowMs = 1000;

/** Two sections of two bars. */
function twoSections() {
  const named = (id: string, name: string) =>
    section(id, { name, slots: slots('| C | F |'), patternId: 'p' });
  return project({
    patterns: [pattern('4/4', { left: 'R.......', right: '..C.C.C.' })],
    song: song([named('a', 'Verse'), named('b', 'Chorus')], 'a b a'),
  });
}

/** The app, or a page of it, with one piano, unless the browser lets nobody hear it. */
async function open(
  view: ViewChange,
  {
    shown,
    refused = false,
    change = (given) => given,
  }: {
    readonly shown?: React.JSX.Element;
    readonly refused?: boolean;
    readonly change?: (given: Parts) => Parts;
  } = {},
): Promise<void> {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  piano = fakePort('piano');
  const request = async (): Promise<MidiAccess> => {
    if (refused) throw new DOMException('not allowed', 'NotAllowedError');
    access = fakeMidi(piano);
    return access;
  };
  const silent = pageParts(twoSections(), view);
  door = createMidiDoor({ taught: () => silent.view.snapshot().taught, request });
  parts = change({ ...silent, midi: door });
  root = createRoot(place);
  root.render(shown ? <PartsContext value={parts}>{shown}</PartsContext> : <App parts={parts} />);
  await expect.element(page.getByRole('button').first()).toBeVisible();
}

afterEach(() => root.unmount());

/** The pedal or key goes down (and up again) well after the last one. */
function press(down: readonly number[], up?: readonly number[]): void {
  nowMs += 1000;
  piano.say(down, nowMs);
  if (up) piano.say(up, nowMs + 200);
}

const pressSoft = () => press(SOFT_DOWN, SOFT_UP);

function button(name: string | RegExp, within: Pick<typeof page, 'getByRole'> = page) {
  return within.getByRole('button', { name, exact: true });
}

function sheet() {
  return page.getByRole('dialog', { name: 'Keys and pedals' });
}

async function openSheet(): Promise<void> {
  await button('Keys and cautions').click();
  await expect.element(sheet()).toBeVisible();
}

describe('a pedal of the instrument', () => {
  beforeEach(() => open({ page: 'play' }));

  it('is taught to play and stop, and does so once the sheet is closed', async () => {
    expect(door.state().status).toBe('closed');
    await openSheet();
    await button('Teach: Play, or stop').click();
    await expect
      .element(page.getByText('Press a key or a pedal of the instrument now.'))
      .toBeVisible();
    pressSoft();
    await expect.element(page.getByText('Left pedal (soft)', { exact: true })).toBeVisible();
    pressSoft();
    await expect.element(page.getByText('Left pedal (soft): Play, or stop.')).toBeVisible();
    expect(parts.playback.state().status).toBe('stopped');
    await button('Close', sheet()).click();
    await expect.element(sheet()).not.toBeInTheDocument();
    pressSoft();
    expect(parts.playback.state()).toMatchObject({ status: 'playing', request: { kind: 'song' } });
    pressSoft();
    expect(parts.playback.state().status).toBe('stopped');
  });

  it('is taken over by what it is taught next, which is said, and can be forgotten', async () => {
    parts.view.set({ taught: { click: { kind: 'control', controller: 67 } } });
    await openSheet();
    await button('Teach: Faster').click();
    await expect.poll(() => door.state().status).toBe('open');
    pressSoft();
    await expect.element(page.getByText(/it no longer does “Click on, or off”/)).toBeVisible();
    await button('Forget: Faster').click();
    expect(parts.view.snapshot().taught).toEqual({});
  });

  it('is not learnt once that was cancelled', async () => {
    await openSheet();
    await button('Teach: Slower').click();
    await button('Cancel').click();
    pressSoft();
    expect(parts.view.snapshot().taught).toEqual({});
  });

  it('that is played is taught with a warning', async () => {
    await openSheet();
    await button('Teach: Slower').click();
    await expect.poll(() => door.state().status).toBe('open');
    press([0xb0, 64, 127], [0xb0, 64, 0]);
    await expect.element(page.getByText(/you play with this one/)).toBeVisible();
  });

  it('is taught in a sheet without a fault that an accessibility scan finds', async () => {
    parts.view.set({ taught: { click: { kind: 'key', keyNumber: 108 } } });
    await openSheet();
    await button('Teach: Slower').click();
    const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
    expect(violations.map(({ id }) => id)).toEqual([]);
  });
});

describe('what was taught before', () => {
  const taught = {
    on: { kind: 'control', controller: 67 },
    faster: { kind: 'key', keyNumber: 108 },
  } as const;

  it('leads from section to section on Play, and from rung to rung on Drill', async () => {
    await open({ page: 'play', taught });
    await expect.poll(() => door.state().status).toBe('open');
    pressSoft();
    expect(parts.view.snapshot().range).toEqual({ firstBar: 2, endBar: 4 });
    parts.view.set({ page: 'drill' });
    pressSoft();
    pressSoft();
    expect(parts.view.snapshot().rung).toBe(2);
  });

  it('jumps in a song that plays, whichever page is open', async () => {
    const jumps: unknown[] = [];
    const jump: Parts['playback']['jump'] = (to) => jumps.push(to);
    const change = (given: Parts) => ({ ...given, playback: { ...given.playback, jump } });
    await open({ page: 'map', taught }, { change });
    await expect.poll(() => door.state().status).toBe('open');
    await parts.playback.play({ kind: 'song', times: 1 });
    pressSoft();
    expect(jumps).toEqual([{ toBar: 2 }]);
  });

  it('is not counted as played', async () => {
    await open({ page: 'play', taught });
    const { midi } = takeInputs({
      keyTarget: window,
      pads: () => undefined,
      openRoom: async () => err({ reason: 'none' }),
      openMidi: door.openPlayed,
    });
    const notes: PlayedNote[] = [];
    valueOf(
      await midi.listen({
        outputTimestamp: () => ({ contextTime: 0, performanceTime: 0 }),
        latencySec: 0,
        onHit: (note) => notes.push(note),
      }),
    );
    press(TOP_KEY);
    press([0x90, 60, 90]);
    expect(notes.map(({ keyNumber }) => keyNumber)).toEqual([60]);
    expect(parts.view.snapshot().speedPercent).toBe(105);
  });

  it('is said not to be heard where the browser does not allow it', async () => {
    await open({ page: 'play', taught }, { refused: true });
    await expect
      .element(page.getByText(/that you taught are not heard.*was not allowed to use MIDI/))
      .toBeVisible();
  });
});

describe('a rhythm on a MIDI keyboard', () => {
  beforeEach(async () => {
    await open({ taught: { click: { kind: 'key', keyNumber: 108 } } }, { shown: <RhythmPage /> });
    await page.getByRole('tab', { name: 'Tap it' }).click();
  });

  it('is tapped on any of its keys, as hard as they are pressed', async () => {
    await button('Tap on a MIDI keyboard').click();
    await expect.element(page.getByText(/or any key of piano/)).toBeVisible();
    await page.getByRole('combobox', { name: 'For' }).selectOptions('Snare, new');
    await button('Free').click();
    await button('Start tapping').click();
    for (let i = 0; i < 24; i++) {
      const atMs = 5000 + i * 500;
      piano.say([0x90, 50 + (i % 5), i % 4 === 0 ? 120 : 60], atMs);
      piano.say([0x80, 50 + (i % 5), 0], atMs + 80);
      piano.say(TOP_KEY, atMs + 250);
    }
    await expect.element(page.getByText('24 taps')).toBeVisible();
    await button('Done').click();
    await expect.element(page.getByText(/at 120 beats a minute/)).toBeVisible();
    await button('Write snare').click();
    const snare = parts.store
      .snapshot()
      .patterns[0]!.sources.find((each) => each.part === 'snare')!;
    expect(ticksOf(snare.strokes)).toEqual([0, 480, 960, 1440]);
    const strengths = snare.strokes.map(({ strength }) => Math.round(strength * 127));
    expect(strengths).toEqual([120, 60, 60, 60]);
  });

  it('is not tapped where none is connected, which is said', async () => {
    piano.unplug();
    await button('Tap on a MIDI keyboard').click();
    await expect.element(page.getByText(/No MIDI instrument is connected/)).toBeVisible();
  });
});

describe('a page-turn pedal that sends keys', () => {
  it('starts and stops with Enter, and leads on and back with the arrows up and down', async () => {
    await open({ page: 'drill' });
    await userEvent.keyboard('{ArrowDown}{ArrowDown}{ArrowUp}');
    expect(parts.view.snapshot().rung).toBe(1);
    await userEvent.keyboard('{Enter}');
    expect(parts.playback.state()).toMatchObject({ request: { kind: 'drill', rung: 1 } });
    await userEvent.keyboard('{Enter}');
    expect(parts.playback.state().status).toBe('stopped');
  });

  it('does not press again what was touched last, nor change it', async () => {
    await open({ page: 'play' });
    await page.getByRole('contentinfo').getByRole('button', { name: 'Click' }).click();
    const { click } = parts.store.snapshot().practice;
    await userEvent.keyboard(' ');
    expect(parts.playback.state().status).toBe('playing');
    expect(parts.store.snapshot().practice.click).toEqual(click);
    const volume = page.getByRole('slider', { name: 'Volume' });
    await volume.click();
    const { master } = parts.view.snapshot().volumes;
    await userEvent.keyboard('{PageDown}');
    expect(parts.view.snapshot().volumes.master).toBe(master);
  });

  it('leaves Space to a choice that is reached by keys', async () => {
    await open({ page: 'play' });
    await button('Mix').click();
    const ear = page.getByRole('radio', { name: 'right ear' });
    (ear.element() as HTMLElement).focus();
    await userEvent.keyboard(' ');
    await expect.element(ear).toBeChecked();
    expect(parts.playback.state().status).toBe('stopped');
  });
});

it('says on Drill which instrument hears the player, and that it is gone', async () => {
  await open({ page: 'drill', hearing: { input: 'midi', latencyMs: {} } });
  await expect.element(page.getByText('Connect and switch it on first.')).toBeVisible();
  await door.open();
  await expect.element(page.getByText('Heard: piano.')).toBeVisible();
  piano.unplug();
  access.dispatchEvent(new Event('statechange'));
  await expect.element(page.getByText('No MIDI instrument is connected.')).toBeVisible();
});
