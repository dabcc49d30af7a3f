import '../../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { formatChartBars } from '../../../../src/core/song/chart.ts';
import { HandsPage } from '../../../../src/ui/hands/HandsPage.tsx';
import { MapPage } from '../../../../src/ui/map/MapPage.tsx';
import { type Parts, PartsContext } from '../../../../src/ui/parts/tool/parts.ts';
import { useView } from '../../../../src/ui/parts/tool/useProject.ts';
import { keyName, majorKey, section, slots, song } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { project } from '../../../support/project.ts';

const verse = section('verse', {
  name: 'Verse',
  patternId: 'p',
  slots: slots('| C | F | G | C |'),
});

let root: Root;
let parts: Parts;

function OpenPage() {
  const open = useView((view) => view.page);
  return open === 'hands' ? <HandsPage /> : <MapPage />;
}

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('main');
  document.body.replaceChildren(place);
  parts = pageParts(project({ song: song([verse], 'verse verse') }));
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <OpenPage />
    </PartsContext>,
  );
  await expect.element(page.getByRole('grid')).toBeVisible();
});

afterEach(() => root.unmount());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const panel = () => page.getByRole('region', { name: 'What the key offers' });
const offer = (name: string) => panel().getByRole('button', { name, exact: true });

function chartNow(): string {
  const found = parts.store.snapshot().song.sections[0]!;
  return formatChartBars(found, found.meter);
}

function heardNow(): string {
  const state = parts.playback.state();
  if (state.status !== 'playing' || state.request.kind !== 'phrase') return 'no phrase';
  const { phrase } = state.request;
  return formatChartBars(phrase, phrase.meter);
}

/** The total motion that the Hands page shows. */
function totalMotion(): number {
  const shown = page.getByRole('status').element().textContent ?? '';
  return Number(/(\d+) semitones in one round/.exec(shown)?.[1]);
}

describe('the chords of the key', () => {
  it('are heard at a tap and written at the chosen beat, one after the other', async () => {
    await offer('A7 V7/ii').click();
    expect(heardNow()).toBe('| A7 |');
    expect(chartNow()).toBe('| C | F | G | C |');
    await button('Write at bar 1, beat 1').click();
    await offer('Dm ii').click();
    await button('Write at bar 2, beat 1').click();
    expect(chartNow()).toBe('| A7 | Dm | G | C |');
    parts.store.undo();
    expect(chartNow()).toBe('| A7 | F | G | C |');
  });

  it('are heard from the circle too', async () => {
    await panel()
      .getByRole('group', { name: 'Scale in a circle' })
      .getByRole('button', { name: 'E 3' })
      .click();
    expect(heardNow()).toBe('| Em |');
  });

  it('make cadences, a bar or half a bar for each chord', async () => {
    await offer('half a bar').click();
    await page
      .getByRole('group', { name: 'Cadences' })
      .getByRole('button', { name: /^ii–V–I/ })
      .click();
    expect(heardNow()).toBe('| Dm7 / G7 / | Cmaj7 |');
    await button('Write at bar 1, beat 1').click();
    expect(chartNow()).toBe('| Dm7 / G7 / | Cmaj7 | G | C |');
  });

  it('are those of another key that is looked at, which can become the song’s', async () => {
    await offer('Relative A minor').click();
    await offer('harmonic').click();
    await offer('G sharp dim vii°').click();
    expect(heardNow()).toBe('| G♯dim |');
    await offer('Make it the song’s key').click();
    expect(keyName(parts.store.snapshot().song.key)).toBe('A minor');
    await expect.element(offer('Relative C major')).toBeVisible();
  });

  it('stand beside the keys that the chords speak for', async () => {
    await expect
      .element(page.getByRole('group', { name: 'Keys that the chords speak for' }))
      .toHaveTextContent(/C major (over )?\d\d %/);
  });
});

it('plays the chord, the bar or the section at once, with the pattern if wanted', async () => {
  const hear = page.getByRole('group', { name: 'Hear at once' });
  await page.getByRole('gridcell', { name: /^Bar 2, beat 3/ }).click();
  await userEvent.keyboard('{Escape}');
  await hear.getByRole('button', { name: 'Chord' }).click();
  expect(heardNow()).toBe('| F |');
  await hear.getByRole('button', { name: 'with the pattern' }).click();
  await hear.getByRole('button', { name: 'Section' }).click();
  expect(heardNow()).toBe('| C | F | G | C |');
  expect(parts.playback.state()).toMatchObject({ request: { patternId: 'p' } });
});

describe('transposing', () => {
  it('shows the new key and its first chords before it moves the song', async () => {
    await button('Transpose …').click();
    await button('To a key').click();
    await page.getByRole('dialog').getByRole('button', { name: 'E flat' }).click();
    await expect.element(page.getByRole('dialog')).toHaveTextContent(/E flat major.*3 flats/);
    expect(chartNow()).toBe('| C | F | G | C |');
    await button('Transpose').click();
    expect(chartNow()).toBe('| E♭ | A♭ | B♭ | E♭ |');
    expect(page.getByRole('dialog').elements()).toEqual([]);
  });

  it('goes where a singer is comfortable', async () => {
    await button('Transpose …').click();
    await button('For a singer').click();
    await expect.element(button('Transpose')).toBeDisabled();
    await page.getByRole('combobox', { name: /^Highest note of the tune/ }).selectOptions('E5');
    await page.getByRole('combobox', { name: /^Singer’s highest/ }).selectOptions('D5');
    await button('Transpose').click();
    expect(keyName(parts.store.snapshot().song.key)).toBe('B♭');
  });
});

it('takes a song from numerals over another key to pinned hands, and all of it back', async () => {
  const before = parts.store.snapshot();
  await button('Text').click();
  const text = page.getByRole('textbox', { name: /Bars between/ });
  await userEvent.fill(text, '| I | vi7 | ii7 / V7 / | I |');
  await userEvent.keyboard('{Control>}{Enter}{/Control}');
  expect(chartNow()).toBe('| C | Am7 | Dm7 / G7 / | C |');
  await button('Transpose …').click();
  await button('Transpose').click();
  expect(chartNow()).toBe('| D | Bm7 | Em7 / A7 / | D |');

  parts.view.set({ page: 'hands' });
  await expect.element(page.getByRole('status')).toHaveTextContent(/semitones in one round/);
  const least = totalMotion();
  await button('Pin Bm7').click();
  await button('Em7: next inversion up').click();
  await expect
    .element(page.getByRole('status'))
    .toHaveTextContent(`${least} before the last change`);
  expect(totalMotion()).toBeGreaterThan(least);

  const done: string[] = [];
  while (parts.store.undoLabel() !== undefined) {
    done.push(parts.store.undoLabel() ?? '');
    parts.store.undo();
  }
  expect(done).toHaveLength(4);
  expect(parts.store.snapshot()).toBe(before);
});

it('has no fault that an accessibility scan finds', async () => {
  parts.store.edit((of) => ({ ...of, song: { ...of.song, key: majorKey('E♭') } }), {
    label: 'key',
  });
  await offer('Dm7 flat 5 viiø7').click();
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
