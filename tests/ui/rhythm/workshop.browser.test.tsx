import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { PlaybackPosition } from '../../../src/app/playbackPosition.ts';
import type { Pattern } from '../../../src/core/rhythm/pattern.ts';
import type { ShelfPattern } from '../../../src/core/rhythm/shelf.ts';
import { decodeShelfPattern } from '../../../src/formats/patternFile.ts';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { RhythmPage } from '../../../src/ui/rhythm/RhythmPage.tsx';
import { section, slots, song, valueOf } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { pattern, source, ticksOf } from '../../support/patterns.ts';
import { project } from '../../support/project.ts';

const FILES = import.meta.glob<unknown>('../../../patterns/*.json', {
  eager: true,
  import: 'default',
});
const SHELF: readonly ShelfPattern[] = Object.values(FILES).map((json) =>
  valueOf(decodeShelfPattern(json)),
);

const PLAIN = pattern('4/4', { left: 'R.......', right: '..C.C.C.' });
const WALTZ = pattern('3/4', { left: 'R..' }).meter;
const BANDED = { ...PLAIN, sources: [source(PLAIN, 'kick', 'x..x..x.')] };

let root: Root;
let parts: Parts;

/** Opens the page on a project with one pattern; `change` makes other parts of those of a test. */
async function open(one: Pattern, change: (given: Parts) => Parts = (given) => given) {
  await page.viewport(1024, 768);
  const place = document.createElement('div');
  place.style.height = '620px';
  document.body.replaceChildren(place);
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  const waltz = section('bridge', { slots: slots('| C |', '3/4'), meter: WALTZ });
  const whole = project({ patterns: [one], song: song([verse, waltz], 'verse bridge') });
  parts = change(pageParts(whole, {}, SHELF));
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <RhythmPage />
    </PartsContext>,
  );
  await expect.element(page.getByRole('grid')).toBeVisible();
}

beforeEach(() => open(BANDED));
afterEach(() => root.unmount());

/** The shown pattern as it is now. */
function now(): Pattern {
  return parts.store.snapshot().patterns[0]!;
}

async function faults(): Promise<unknown[]> {
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
}

async function desk(tab: string): Promise<void> {
  await page.getByRole('tab', { name: tab }).click();
}

describe('the shelf', () => {
  beforeEach(async () => {
    await page.getByRole('button', { name: 'Patterns' }).click();
    await page.getByRole('button', { name: 'From the shelf …' }).click();
  });

  it('is searched by words and by what a pattern is like', async () => {
    const entries = page.getByRole('dialog').getByRole('listitem');
    await expect.element(page.getByText(`${SHELF.length} patterns`)).toBeVisible();
    await page.getByRole('searchbox').fill('waltz');
    await page.getByRole('combobox', { name: 'Feel' }).selectOptions('swung');
    await expect.element(page.getByRole('status').first()).toHaveTextContent('1 pattern,');
    expect(entries.first().element().textContent).toContain('Jazz waltz');
    await page.getByRole('searchbox').fill('zither');
    await expect.element(page.getByText(/Nothing on the shelf is like that/)).toBeVisible();
  });

  it('is ordered by likeness to the groove of the shown pattern', async () => {
    await page.getByRole('button', { name: 'Like this groove' }).click();
    const first = page.getByRole('dialog').getByRole('listitem').first();
    await expect.element(first).toHaveTextContent(/Very like it, \d+ % alike/);
  });

  it('lets a pattern be heard without touching the song, and be taken', async () => {
    const before = parts.store.snapshot();
    await page.getByRole('button', { name: 'Hear Bossa nova', exact: true }).click();
    expect(parts.playback.state()).toMatchObject({
      request: { kind: 'pattern', pattern: { name: 'Bossa nova' } },
    });
    expect(parts.store.snapshot()).toBe(before);
    await page.getByRole('button', { name: 'Take Bossa nova', exact: true }).click();
    expect(parts.playback.state().status).toBe('stopped');
    expect(parts.store.snapshot().patterns.map(({ name }) => name)).toEqual([
      'Pattern',
      'Bossa nova',
    ]);
    await expect.element(page.getByRole('grid', { name: /Bossa nova/ })).toBeVisible();
  });

  it('has no fault that an accessibility scan finds', async () =>
    expect(await faults()).toEqual([]));
});

/** A key of the keyboard goes down and up again, at moments of the page's clock. */
function tapKey(code: string, downMs: number, heldMs = 60): void {
  for (const [type, ms] of [
    ['keydown', downMs],
    ['keyup', downMs + heldMs],
  ] as const) {
    const event = new KeyboardEvent(type, { code, bubbles: true, cancelable: true });
    Object.defineProperty(event, 'timeStamp', { value: ms });
    document.body.dispatchEvent(event);
  }
}

/** Taps a figure of so many beats in each of some bars, the two keys in turn. */
function tapFigure(beats: readonly number[], bars: number, fromMs: number, beatMs: number): void {
  const all = Array.from({ length: bars }, (_, bar) => beats.map((beat) => bar * 4 + beat));
  for (const [i, beat] of all.flat().entries())
    tapKey(i % 2 === 0 ? 'KeyF' : 'KeyJ', fromMs + beat * beatMs);
}

describe('tapping on two keys', () => {
  it('without a click finds the tempo and writes a new part of the band', async () => {
    await desk('Tap it');
    await page.getByRole('combobox', { name: 'For' }).selectOptions('Snare, new');
    await page.getByRole('button', { name: 'Free' }).click();
    await page.getByRole('combobox', { name: 'First tap on' }).selectOptions('2');
    await page.getByRole('button', { name: 'Start tapping' }).click();
    tapFigure([1, 2.5, 3], 6, performance.now(), 520);
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.element(page.getByText(/at 115 beats a minute/)).toBeVisible();
    await page.getByRole('button', { name: 'Write snare' }).click();
    const snare = now().sources.find(({ part }) => part === 'snare');
    expect(ticksOf(snare!.strokes)).toEqual([480, 1200, 1440]);
    expect(parts.store.undoLabel()).toBe('tap snare');
    parts.store.undo();
    expect(now()).toEqual(BANDED);
  });

  it('to the click takes the lateness off, and adds to a part that is there', async () => {
    root.unmount();
    const began = performance.now();
    const ticksPerMs = (80 * 480) / 60_000;
    const position = () =>
      ({
        tick: ((performance.now() - began) * ticksPerMs) % 1920,
        countingIn: false,
      }) as PlaybackPosition;
    await open(BANDED, (given) => ({ ...given, playback: { ...given.playback, position } }));
    await desk('Tap it');
    await page.getByRole('button', { name: 'Start tapping' }).click();
    await new Promise((resolve) => setTimeout(resolve, 100));
    tapFigure([0, 1, 2.5], 8, began + 8 * 750 + 40, 750);
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.element(page.getByText(/(3\d|4\d) ms behind the click/)).toBeVisible();
    await page.getByRole('button', { name: 'Add to it' }).click();
    expect(ticksOf(now().sources[0]!.strokes)).toEqual([0, 480, 720, 1200, 1440]);
  });

  it('says what to do where nothing was tapped', async () => {
    await desk('Tap it');
    await page.getByRole('button', { name: 'Free' }).click();
    await page.getByRole('button', { name: 'Start tapping' }).click();
    await page.getByRole('button', { name: 'Done' }).click();
    await expect.element(page.getByText(/Nothing was tapped/)).toBeVisible();
  });

  it('works on the pads as well', async () => {
    await desk('Tap it');
    await page.getByRole('button', { name: 'Free' }).click();
    await page.getByRole('button', { name: 'Start tapping' }).click();
    await page.getByRole('button', { name: 'Left pad, key F' }).click();
    await page.getByRole('button', { name: 'Right pad, key J' }).click();
    await expect.element(page.getByText('2 taps')).toBeVisible();
  });
});

function counts() {
  return page.getByRole('textbox', { name: /Counts that sound/ });
}

describe('saying a rhythm', () => {
  it('writes what can be read at once, as one change', async () => {
    await desk('Say it');
    await page.getByRole('combobox', { name: 'For' }).selectOptions('Left hand');
    await counts().fill('');
    await userEvent.type(counts(), '1 & 3');
    expect(ticksOf(now().left)).toEqual([0, 240, 960]);
    parts.store.undo();
    expect(now()).toEqual(BANDED);
  });

  it('says where something is wrong, and leaves the pattern alone', async () => {
    await desk('Say it');
    await counts().fill('1 & boom');
    await expect.element(page.getByText(/“boom” is no count \(at character 5\)/)).toBeVisible();
    expect(now()).toEqual(BANDED);
  });

  it('makes a part of the band, which is then its own', async () => {
    await desk('Say it');
    await page.getByRole('combobox', { name: 'For' }).selectOptions('Bass, new');
    await userEvent.type(counts(), '1 3');
    await userEvent.tab();
    await userEvent.type(counts(), ' 4');
    expect(now().sources.map(({ id }) => id)).toEqual(['kick', 'bass']);
    expect(ticksOf(now().sources[1]!.strokes)).toEqual([0, 960, 1440]);
  });
});

describe('the desk', () => {
  it('changes the beat, the bar and the hand of the cursor, each as one change', async () => {
    await page.getByRole('gridcell', { name: 'Right hand, beat 2: chord' }).click();
    await desk('Change');
    await page.getByRole('button', { name: 'step later' }).click();
    expect(ticksOf(now().right)).toEqual([720, 1200, 1680]);
    expect(ticksOf(now().left)).toEqual([0]);
    parts.store.undo();
    await page.getByRole('button', { name: 'hands change over' }).click();
    expect(ticksOf(now().left)).toEqual([480, 960, 1440]);
    parts.store.undo();
    expect(now()).toEqual(BANDED);
  });

  it('shows an easier version before it is taken as a variation', async () => {
    parts.view.set({ speedPercent: 100 });
    await desk('Levels');
    await page.getByRole('button', { name: 'Level 1' }).click();
    await expect.element(page.getByText(/on the beat/)).toBeVisible();
    expect(parts.store.snapshot().patterns).toHaveLength(1);
    await page.getByRole('button', { name: 'Hear it' }).click();
    expect(parts.playback.state()).toMatchObject({ request: { kind: 'pattern', pattern: {} } });
    await page.getByRole('button', { name: 'Take as a variation' }).click();
    expect(parts.store.snapshot().patterns.map(({ name }) => name)).toEqual([
      'Pattern',
      'Pattern (level 1)',
    ]);
  });

  it('gives a pattern to a section, and a version of it to one in another meter', async () => {
    await desk('In the song');
    await page.getByRole('button', { name: /^verse/i }).click();
    expect(parts.store.snapshot().song.sections[0]?.patternId).toBeUndefined();
    await page.getByRole('button', { name: /^bridge/i }).click();
    await page.getByRole('button', { name: /^cut/ }).click();
    const { patterns, song: changed } = parts.store.snapshot();
    expect(patterns.map(({ name }) => name)).toEqual(['Pattern', 'Pattern (in 3/4)']);
    expect(changed.sections[1]?.patternId).toBe(patterns[1]?.id);
    parts.store.undo();
    expect(parts.store.snapshot().patterns).toHaveLength(1);
  });

  it('goes from word to word by arrows', async () => {
    (page.getByRole('tab', { name: 'This hit' }).element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}{ArrowRight}');
    await expect.element(page.getByRole('tab', { name: 'Levels' })).toHaveFocus();
    await expect.element(page.getByText(/An estimate for an average player/)).toBeVisible();
  });

  it('graces the ending with a fill that is heard in a phrase before it is taken', async () => {
    await desk('Ending');
    await page.getByRole('button', { name: 'Closing in' }).click();
    await page.getByRole('button', { name: 'Hear it' }).click();
    const state = parts.playback.state();
    const heard = state.status === 'stopped' ? undefined : state.request;
    expect(heard).toMatchObject({ kind: 'pattern', pattern: { bars: 4 } });
    expect(now()).toEqual(BANDED);
    await page.getByRole('button', { name: 'Take as the ending' }).click();
    expect(parts.playback.state().status).toBe('stopped');
    expect(now().ending?.left.at(-1)?.play).toEqual(['approach']);
    await expect.element(page.getByRole('button', { name: 'Ending', pressed: true })).toBeVisible();
    expect(parts.store.undoLabel()).toBe('ending: closing in');
    parts.store.undo();
    expect(now()).toEqual(BANDED);
  });

  it('changes a fill that was taken by the verbs of any bar, its divisions too', async () => {
    await page.getByRole('button', { name: 'Add an ending' }).click();
    await page.getByRole('button', { name: 'Bass walks' }).click();
    await page.getByRole('button', { name: 'Take as the ending' }).click();
    await page.getByRole('gridcell', { name: 'Beat 4, in halves' }).click();
    await page.getByRole('menuitemradio', { name: 'in three' }).click();
    expect(now().divisions).toEqual(BANDED.divisions);
    expect(now().ending?.divisions?.at(-1)).toBe(3);
  });

  it('puts several voices on one hit of the right hand, and makes a chord of it again', async () => {
    await page.getByRole('gridcell', { name: /Right hand, beat 2: chord/ }).click();
    await desk('This hit');
    const plays = page.getByRole('group', { name: 'Plays' });
    await plays.getByRole('button', { name: 'voice 1' }).click();
    await plays.getByRole('button', { name: 'several' }).click();
    await plays.getByRole('button', { name: 'voice 3' }).click();
    expect(now().right[0]?.play).toEqual(['voice-1', 'voice-3']);
    await plays.getByRole('button', { name: 'voice 1' }).click();
    expect(now().right[0]?.play).toEqual(['voice-3']);
    await plays.getByRole('button', { name: 'several' }).click();
    await plays.getByRole('button', { name: 'chord' }).click();
    expect(now()).toEqual(BANDED);
  });

  it('breaks the chords of a bar, leads its bass on, and pushes a beat', async () => {
    await desk('Change');
    await page.getByRole('button', { name: 'How they play' }).click();
    await page.getByRole('button', { name: 'up', exact: true }).click();
    expect(now().right.map(({ play }) => play[0])).toEqual(['voice-1', 'voice-2', 'voice-3']);
    await page.getByRole('button', { name: 'leads to the next root' }).click();
    expect(now().left.at(-1)).toMatchObject({ at: 1680, play: ['approach'] });
    parts.store.undo();
    parts.store.undo();
    expect(now()).toEqual(BANDED);
  });

  it('plays the ending as it is, and follows what is changed in it', async () => {
    await page.getByRole('button', { name: 'Add an ending' }).click();
    await page.getByRole('button', { name: 'The ending you have' }).click();
    await page.getByRole('button', { name: 'Hear it' }).click();
    const heard = () => {
      const state = parts.playback.state();
      return state.status === 'stopped' || state.request.kind !== 'pattern'
        ? undefined
        : state.request.pattern;
    };
    expect(heard()?.left.at(-1)?.at).toBe(3 * 1920);
    await page.getByRole('gridcell', { name: 'Left hand, beat 3: empty' }).click();
    await expect.poll(() => heard()?.left.at(-1)?.at).toBe(3 * 1920 + 960);
  });

  it('asks what the player’s hands can do, and measures by that', async () => {
    await desk('Levels');
    await page.getByRole('button', { name: 'My hands' }).click();
    await page.getByRole('combobox', { name: 'One key again' }).selectOptions('2 a second');
    expect(parts.view.snapshot().handLimits.repeatGapSec).toBe(0.5);
    expect(await faults()).toEqual([]);
    await userEvent.keyboard('{Escape}');
    await expect.element(page.getByText(/your hands as you set them/)).toBeVisible();
  });

  it('has no fault that an accessibility scan finds, whatever it shows', async () => {
    for (const tab of [
      'Change',
      'Ending',
      'Levels',
      'Say it',
      'Tap it',
      'Numbers',
      'In the song',
    ]) {
      await desk(tab);
      expect(await faults()).toEqual([]);
    }
    await desk('Tap it');
    await page.getByRole('button', { name: 'Start tapping' }).click();
    expect(await faults()).toEqual([]);
  });
});
