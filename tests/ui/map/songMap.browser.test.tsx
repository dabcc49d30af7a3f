import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { formatChartBars } from '../../../src/core/song/chart.ts';
import { MapPage } from '../../../src/ui/map/MapPage.tsx';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { majorKey, section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

const verse = section('verse', {
  name: 'Verse',
  patternId: 'p',
  slots: slots('| D | Bm7 | G / A / | D |'),
});
const bridge = section('bridge', {
  name: 'Bridge',
  kind: 'bridge',
  wash: 'plum',
  slots: slots('| Em7 | A7 |'),
});

let root: Root;
let parts: Parts;

beforeEach(async () => {
  await page.viewport(1024, 768);
  const place = document.createElement('main');
  document.body.replaceChildren(place);
  parts = pageParts(
    project({ song: song([verse, bridge], 'verse bridge verse', { key: majorKey('D') }) }),
  );
  root = createRoot(place);
  root.render(
    <PartsContext value={parts}>
      <MapPage />
    </PartsContext>,
  );
  await expect.element(page.getByRole('grid')).toBeVisible();
});

afterEach(() => root.unmount());

function chartNow(id = 'verse'): string {
  const found = parts.store.snapshot().song.sections.find((each) => each.id === id)!;
  return formatChartBars(found, found.meter);
}

function formNow(): string {
  return parts.store
    .snapshot()
    .song.form.map((entry) => entry.sectionId)
    .join(' ');
}

const cell = (name: string | RegExp) => page.getByRole('gridcell', { name });
const button = (name: string) => page.getByRole('button', { name, exact: true });

const text = () => page.getByRole('textbox', { name: /Bars between/ });

describe('the form', () => {
  it('is read in playing order with the number of each return', async () => {
    const blocks = page.getByRole('toolbar').getByRole('button');
    await expect.element(blocks.nth(0)).toHaveTextContent('Verse 1');
    await expect.element(blocks.nth(1)).toHaveTextContent('Bridge');
    await expect.element(blocks.nth(2)).toHaveTextContent('Verse 2');
  });

  it('shows the chart of the section that is tapped', async () => {
    await page.getByRole('button', { name: /^Bridge/ }).click();
    expect(parts.view.snapshot().sectionId).toBe('bridge');
    await expect.element(page.getByRole('grid', { name: 'Chart of Bridge' })).toBeVisible();
  });

  it('is reordered by buttons, keys and dragging, each undone as one change', async () => {
    await page.getByRole('button', { name: /^Bridge/ }).click();
    await page.getByRole('button', { name: 'Later' }).click();
    expect(formNow()).toBe('verse verse bridge');
    await page.getByRole('button', { name: /^Bridge/ }).click();
    await userEvent.keyboard('{Control>}{ArrowLeft}{ArrowLeft}{ArrowRight}{/Control}');
    expect(formNow()).toBe('verse bridge verse');
    expect(document.activeElement?.textContent).toContain('Bridge');
    await userEvent.dragAndDrop(
      page.getByRole('button', { name: /^Verse 1/ }),
      page.getByRole('button', { name: /^Verse 2/ }),
      { targetPosition: { x: 300, y: 20 } },
    );
    expect(formNow()).toBe('bridge verse verse');
    for (let i = 0; i < 5; i++) parts.store.undo();
    expect(formNow()).toBe('verse bridge verse');
  });

  it('gains a return and loses it', async () => {
    await page.getByRole('button', { name: /^Bridge/ }).click();
    await button('Again at end').click();
    expect(formNow()).toBe('verse bridge verse bridge');
    await button('Take out').click();
    expect(formNow()).toBe('verse bridge verse');
  });

  it('keeps sections that are not played within reach', async () => {
    await page.getByRole('button', { name: /^Bridge/ }).click();
    await button('Take out').click();
    await expect
      .element(page.getByRole('group', { name: 'Not in the form' }).getByRole('button'))
      .toHaveTextContent('Bridge');
  });
});

describe('playing a part', () => {
  it('marks the chosen return and plays it; the whole song comes back at a touch', async () => {
    await page.getByRole('button', { name: /^Verse 2/ }).click();
    await button('Play this section').click();
    expect(parts.view.snapshot().range).toEqual({ firstBar: 6, endBar: 10 });
    expect(parts.playback.state()).toMatchObject({
      status: 'playing',
      request: { kind: 'song', range: { firstBar: 6, endBar: 10 } },
    });
    await button('Whole song').click();
    expect(parts.view.snapshot().range).toBeUndefined();
  });

  it('moves a chord that is dragged by its name, as far as the changes beside it', async () => {
    const name = () => cell(/^Bar 3, beat 3: A/).getByText('A', { exact: true });
    await userEvent.dragAndDrop(name(), cell(/^Bar 3, beat 2/));
    expect(chartNow()).toBe('| D | Bm7 | G A / / | D |');
    expect(parts.view.snapshot().range).toBeUndefined();
    parts.store.undo();
    await userEvent.dragAndDrop(name(), cell(/^Bar 4, beat 4/));
    expect(chartNow()).toBe('| D | Bm7 | G / / A | D |');
    await expect.element(page.getByRole('textbox', { name: /^Chord of/ })).not.toBeInTheDocument();
  });

  it('marks bars whose beats are dragged over', async () => {
    await userEvent.dragAndDrop(cell(/^Bar 2, beat 2/), cell(/^Bar 3, beat 4/));
    expect(parts.view.snapshot().range).toEqual({ firstBar: 1, endBar: 3 });
    expect(page.getByRole('textbox', { name: /^Chord of/ }).elements()).toEqual([]);
  });

  it('marks bars with Shift and the arrows', async () => {
    (cell(/^Bar 1, beat 1/).element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowRight}{Shift>}{ArrowRight}{ArrowRight}{ArrowLeft}{/Shift}');
    expect(parts.view.snapshot().range).toEqual({ firstBar: 0, endBar: 2 });
  });
});

describe('a chord of the chart', () => {
  it('is typed into its beat and taken away again', async () => {
    await cell('Bar 1, beat 3: D goes on').click();
    await userEvent.keyboard('F#m7{Enter}');
    expect(chartNow()).toBe('| D / F♯m7 / | Bm7 | G / A / | D |');
    await userEvent.keyboard('{Delete}');
    expect(chartNow()).toBe('| D | Bm7 | G / A / | D |');
  });

  it('is typed as a numeral or number without opening the cell first', async () => {
    (cell(/^Bar 1, beat 1/).element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowRight}V7{Enter}{ArrowRight}6-{Enter}');
    expect(chartNow()).toBe('| D A7 Bm / | Bm7 | G / A / | D |');
  });

  it('stays as it was while what is typed cannot be read, and on Escape', async () => {
    await cell(/^Bar 2, beat 1/).click();
    await userEvent.keyboard('Hm7{Enter}');
    await expect.element(page.getByText(/“Hm7” does not begin with a note/)).toBeVisible();
    expect(chartNow()).toBe('| D | Bm7 | G / A / | D |');
    await userEvent.keyboard('{Escape}');
    expect(document.activeElement).toBe(cell(/^Bar 2, beat 1/).element());
    expect(chartNow()).toBe('| D | Bm7 | G / A / | D |');
  });

  it('comes a beat earlier or later with Control and the arrows', async () => {
    (cell(/^Bar 1, beat 1/).element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowDown}{End}');
    (cell(/^Bar 3, beat 3/).element() as HTMLElement).click();
    await userEvent.keyboard('{Escape}{Control>}{ArrowRight}{/Control}');
    expect(chartNow()).toBe('| D | Bm7 | G / / A | D |');
  });

  it('may be a whole line that is pasted', async () => {
    await cell(/^Bar 2, beat 1/).click();
    await userEvent.fill(
      page.getByRole('textbox', { name: 'Chord of bar 2, beat 1' }),
      '| Em7 / A / | Bm G |',
    );
    await userEvent.keyboard('{Enter}');
    expect(chartNow()).toBe('| D | Em7 / A / | Bm / G / | D |');
  });

  it('is shown as symbol, numeral or number', async () => {
    await button('Numbers').click();
    await expect.element(cell('Bar 2, beat 1: 6-7, 4 beats, Bm7')).toBeVisible();
  });
});

describe('the chart as text', () => {
  it('brings into sight what is wrong with the text, however low the window is', async () => {
    await button('Text').click();
    await userEvent.fill(text(), '| D | Hm7 / A / |');
    await page.viewport(1024, 400);
    scrollTo(0, 0);
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    const sentence = page.getByText(/Bar 2, column 7: “Hm7”/);
    await expect.poll(() => sentence.element().getBoundingClientRect().bottom).toBeLessThan(401);
  });

  it('selects what cannot be read, keeps it, and leaves the song alone until it is repaired', async () => {
    await button('Text').click();
    await userEvent.fill(text(), '| D | Hm7 / A / |');
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    await expect.element(page.getByText(/Bar 2, column 7: “Hm7”/)).toBeVisible();
    const field = text().element() as HTMLTextAreaElement;
    expect(field.value.slice(field.selectionStart, field.selectionEnd)).toBe('Hm7');
    expect(chartNow()).toBe('| D | Bm7 | G / A / | D |');
    await button('Beats').click();
    await button('Text, to repair').click();
    expect((text().element() as HTMLTextAreaElement).value).toBe('| D | Hm7 / A / |');
    await userEvent.fill(text(), '| D | Bm7 / A / |');
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    expect(chartNow()).toBe('| D | Bm7 / A / |');
  });
});

describe('the song', () => {
  it('changes key, tempo, meter and pattern', async () => {
    await page.getByRole('combobox', { name: 'Mode' }).selectOptions('minor');
    expect(parts.store.snapshot().song.key.mode).toBe('minor');
    const tempo = page.getByRole('spinbutton');
    await userEvent.fill(tempo, '96');
    await userEvent.keyboard('{Enter}');
    expect(parts.store.snapshot().song.tempo.bpm).toBe(96);
    await userEvent.fill(page.getByRole('textbox', { name: 'Meter' }), '6/9');
    await userEvent.keyboard('{Enter}');
    await expect.element(page.getByText(/lower figure must be 2, 4, 8 or 16/)).toBeVisible();
    await userEvent.fill(page.getByRole('textbox', { name: 'Meter' }), '6/8');
    await userEvent.keyboard('{Enter}');
    await expect.element(page.getByText(/so the hands rest here/)).toBeVisible();
    await page.getByRole('combobox', { name: 'Pattern', exact: true }).selectOptions('');
    expect(parts.store.snapshot().song.sections[0]?.patternId).toBeUndefined();
  });
});

describe('what a chord does', () => {
  it('is said in the key', async () => {
    await page.getByRole('button', { name: /^Bridge/ }).click();
    (cell(/^Bar 2, beat 1/).element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowLeft}');
    await expect.element(page.getByText('Bar 1: Em7 is ii7 of D major.')).toBeVisible();
  });
});

describe('the whole song', () => {
  it('is typed in numerals', async () => {
    await button('Text').click();
    await userEvent.fill(text(), '| I | vi | ii7 / V7 / | I |');
    await userEvent.keyboard('{Control>}{Enter}{/Control}');
    expect(chartNow()).toBe('| D | Bm | Em7 / A7 / | D |');
  });

  it('says how much of it is different music', async () => {
    await expect.element(page.getByText(/^Unique music/)).toHaveTextContent('0:12 of 0:20');
    await expect.element(page.getByText('6 of 10 bars to learn')).toBeVisible();
  });

  it('starts from a usual form, undone as one change', async () => {
    await page.getByText('Usual forms').click();
    await button('Start from 12-bar blues').click();
    await expect.element(page.getByRole('grid', { name: 'Chart of Strophe' })).toBeVisible();
    parts.store.undo();
    expect(formNow()).toBe('verse bridge verse');
  });

  it('gives one return another ending', async () => {
    await page.getByRole('button', { name: /^Verse 2/ }).click();
    await button('Another ending for Verse 2').click();
    await userEvent.fill(
      page.getByRole('textbox', { name: 'Chords of this ending' }),
      '| A7 | D |',
    );
    await userEvent.keyboard('{Enter}');
    await expect
      .element(page.getByText('Verse 2 ends with this, in place of its last bar:'))
      .toBeVisible();
    const ending = page.getByRole('grid', { name: 'Chart of the ending of Verse 2' });
    await ending.getByRole('gridcell', { name: 'Bar 1, beat 3: A7 goes on' }).click();
    await userEvent.keyboard('V7/vi{Enter}');
    const written = parts.store.snapshot().song.form[2]!.ending!;
    expect(written.slots.map(({ durationTicks }) => durationTicks)).toEqual([960, 960, 1920]);
    await button('Numerals').click();
    await expect
      .element(page.getByRole('textbox', { name: 'Chords of this ending' }))
      .toHaveValue('| V7 / III7 / | I |');
    expect(chartNow()).toBe('| D | Bm7 | G / A / | D |');
    await button('End as the section does').click();
    expect(parts.store.snapshot().song.form[2]?.ending).toBeUndefined();
  });
});

it('has no fault that an accessibility scan finds', async () => {
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});
