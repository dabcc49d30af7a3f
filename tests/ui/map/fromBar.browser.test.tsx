import '../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import type { ReactNode } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { patternCourse } from '../../../src/core/song/patternCourse.ts';
import { timelineOf } from '../../../src/core/song/timeline.ts';
import { setPatternFrom } from '../../../src/state/edits/sectionPatterns.ts';
import { MapPage } from '../../../src/ui/map/MapPage.tsx';
import { type Parts, PartsContext } from '../../../src/ui/parts/tool/parts.ts';
import { PlayPage } from '../../../src/ui/play/PlayPage.tsx';
import { RhythmPage } from '../../../src/ui/rhythm/RhythmPage.tsx';
import { NO_COUNT_IN, onFakeTime } from '../../support/fakePlayback.ts';
import { meter, section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { pattern } from '../../support/patterns.ts';

const WHOLE = pattern('4/4', { left: 'R---' }, { id: 'whole', name: 'Whole notes' });
const HALVES = pattern('4/4', { left: 'R-5-' }, { id: 'halves', name: 'Halves' });
const WALTZ = pattern('3/4', { left: 'R--' }, { id: 'waltz', name: 'Waltz' });

const verse = section('verse', {
  name: 'Verse',
  slots: slots('| C | F | G | C |'),
  patternId: 'whole',
});

let root: Root;
let parts: Parts;

/** Opens a page on a verse of four bars that is played twice, with the Rhythm page on Halves; it plays on a clock of the test's. */
async function open(shown: ReactNode, patternId = 'halves') {
  await page.viewport(1024, 768);
  const place = document.createElement('main');
  place.style.height = '620px';
  document.body.replaceChildren(place);
  const heard = onFakeTime({
    song: song([verse], 'verse verse'),
    patterns: [WHOLE, HALVES, WALTZ],
    practice: NO_COUNT_IN,
  });
  const { store, playback } = heard;
  parts = { ...pageParts(store.snapshot(), { patternId }), store, playback };
  root = createRoot(place);
  root.render(<PartsContext value={parts}>{shown}</PartsContext>);
  await expect.element(page.getByRole('heading', { level: 2 })).toBeInTheDocument();
  return heard;
}

afterEach(() => root.unmount());

/** What each playing plays from which bar on: `1 whole, 3 halves | 1 whole`. */
function plays(): string {
  return timelineOf(parts.store.snapshot().song)
    .sections.map((span) =>
      patternCourse(span)
        .map(({ bar, patternId }) => `${bar + 1} ${patternId ?? 'rest'}`)
        .join(', '),
    )
    .join(' | ');
}

async function faults(): Promise<unknown[]> {
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
}

const bar = (number: number) =>
  page.getByRole('button', { name: new RegExp(`^From bar ${number}\\b`) });

async function openBars(): Promise<void> {
  await page.getByRole('tab', { name: 'In the song' }).click();
  await page.getByRole('button', { name: 'From bar … in Verse' }).click();
}

describe('on Rhythm', () => {
  it('the shown pattern is played from the bar that is pressed, and heard there', async () => {
    const { playback, pass, basses } = await open(<RhythmPage />);
    await openBars();
    await bar(3).click();
    expect(plays()).toBe('1 whole, 3 halves | 1 whole, 3 halves');
    await expect.element(bar(3)).toHaveAttribute('aria-pressed', 'true');
    await playback.play({ kind: 'song', range: { firstBar: 0, endBar: 4 }, times: 1 });
    pass(9);
    // At 120 a bar of 4/4 lasts two seconds: whole notes, then two halves in each bar.
    expect(basses()).toEqual(['C 0', 'F 2', 'G 4', 'D 5', 'C 6', 'G 7']);
  });

  it('pressed once more, the bar goes on as before', async () => {
    await open(<RhythmPage />);
    await openBars();
    await bar(3).click();
    await bar(3).click();
    expect(plays()).toBe('1 whole | 1 whole');
  });

  it('it can be one time only, also by keys', async () => {
    await open(<RhythmPage />);
    await openBars();
    await page.getByRole('button', { name: 'Time 2 only', exact: true }).click();
    (bar(2).element() as HTMLElement).focus();
    await userEvent.keyboard('{Enter}');
    expect(plays()).toBe('1 whole | 1 whole, 2 halves');
  });

  it('a bar in another meter is offered versions', async () => {
    await open(<RhythmPage />, 'waltz');
    await openBars();
    await bar(3).click();
    await expect.element(page.getByText('Bar 3 is in 4/4', { exact: false })).toBeVisible();
    await page.getByRole('button', { name: /^beat for beat; in the added/ }).click();
    const { patterns } = parts.store.snapshot();
    const version = patterns.find(({ name }) => name === 'Waltz (in 4/4)');
    expect(plays()).toBe(`1 whole, 3 ${version?.id} | 1 whole, 3 ${version?.id}`);
  });

  it('a section that plays it in part says so, and plays it throughout when pressed', async () => {
    await open(<RhythmPage />);
    await openBars();
    await bar(3).click();
    await userEvent.keyboard('{Escape}');
    const ticket = page.getByRole('button', { name: /^Verse 4 bars/ });
    await expect.element(ticket).toHaveAttribute('aria-pressed', 'mixed');
    await expect.element(ticket).toHaveTextContent('plays Whole notes, from bar 3 Halves');
    await ticket.click();
    expect(plays()).toBe('1 halves | 1 halves');
  });

  it('the sheet of bars has no fault that an accessibility scan finds', async () => {
    await open(<RhythmPage />);
    await openBars();
    await bar(3).click();
    expect(await faults()).toEqual([]);
  });
});

describe('on Map', () => {
  /** Stands in a bar of the chart. */
  async function standIn(name: RegExp): Promise<void> {
    await page.getByRole('gridcell', { name }).click();
    await userEvent.keyboard('{Escape}');
  }

  const choice = (number: number) =>
    page.getByRole('combobox', { name: `From bar ${number}`, exact: true });

  it('another pattern is chosen at the bar where one stands, and stands over it', async () => {
    await open(<MapPage />);
    await standIn(/^Bar 3, beat 1/);
    await choice(3).selectOptions('Halves (4/4)');
    expect(plays()).toBe('1 whole, 3 halves | 1 whole, 3 halves');
    await expect
      .element(page.getByRole('gridcell', { name: /^Bar 3, beat 1/ }))
      .toHaveAccessibleName(/from here Halves$/);
    const marks = () =>
      [...document.querySelectorAll('.chart-pattern-mark')].map(({ textContent }) => textContent);
    expect(marks()).toEqual(['Whole notes', 'Halves']);
    await choice(3).selectOptions('pattern as before');
    expect(marks()).toEqual([]);
  });

  it('moves with its bar when a bar is added before it', async () => {
    await open(<MapPage />);
    await standIn(/^Bar 3, beat 1/);
    await choice(3).selectOptions('none: hands rest');
    await standIn(/^Bar 1, beat 1/);
    await page.getByRole('button', { name: /^Add bar/ }).click();
    expect(plays()).toBe('1 whole, 4 rest | 1 whole, 4 rest');
  });

  it('is that of one playing where it is chosen for this one only', async () => {
    await open(<MapPage />);
    await page
      .getByRole('button', { name: /^Verse 2/ })
      .first()
      .click();
    await standIn(/^Bar 3, beat 1/);
    await page.getByRole('button', { name: 'Verse 2 only' }).click();
    await choice(3).selectOptions('Halves (4/4)');
    expect(plays()).toBe('1 whole | 1 whole, 3 halves');
    await page.getByRole('button', { name: 'Play as the section does' }).click();
    expect(plays()).toBe('1 whole | 1 whole');
  });

  it('that does not fit its bars is said to rest there, and offers versions', async () => {
    await open(<MapPage />);
    await standIn(/^Bar 3, beat 1/);
    await choice(3).selectOptions('Waltz (3/4)');
    await expect
      .element(page.getByText('“Waltz” is in 3/4, so the hands rest in bars 3 and 4.'))
      .toBeVisible();
    expect(await faults()).toEqual([]);
    await page.getByRole('button', { name: 'Make it fit 4/4 …' }).click();
    await page.getByRole('button', { name: /^beat for beat; in the added/ }).click();
    const { patterns, song: changed } = parts.store.snapshot();
    const version = patterns.find(({ name }) => name === 'Waltz (in 4/4)');
    expect(version?.meter).toEqual(meter('4/4'));
    expect(changed.sections[0]?.patternChanges).toEqual([{ bar: 2, patternId: version?.id }]);
  });
});

describe('on Play', () => {
  const shown = () =>
    document.querySelector('.practice-pattern-now .practice-pattern-name')?.textContent;

  it('the pattern of the bar that is heard is shown, and where it will change', async () => {
    const { store, playback, pass } = await open(<PlayPage />);
    store.edit(setPatternFrom({ kind: 'section', id: 'verse' }, 2, 'halves'), { label: 'any' });
    await expect.poll(shown).toBe('Whole notes');
    const glance = document.querySelector('.practice-glance-now');
    expect([...(glance?.children ?? [])].map((each) => each.hasAttribute('data-turn'))).toEqual([
      false,
      false,
      true,
      false,
    ]);
    await playback.play({ kind: 'song', times: 1 });
    pass(4.5);
    await expect.poll(shown).toBe('Halves');
  });
});
