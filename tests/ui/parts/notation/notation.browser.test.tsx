import '../../../../src/ui/kit/theme.css';
import * as axe from 'axe-core';
import { Suspense } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page } from 'vitest/browser';
import type { Pattern } from '../../../../src/core/rhythm/pattern.ts';
import type { SheetEvent } from '../../../../src/core/rhythm/sheet.ts';
import { HandsPage } from '../../../../src/ui/hands/HandsPage.tsx';
import { NotationView } from '../../../../src/ui/parts/notation/NotationView.tsx';
import { type Notation, STAVES } from '../../../../src/ui/parts/notation/notation.ts';
import { staffPlace } from '../../../../src/ui/parts/notation/staffPlaces.ts';
import { PartsContext } from '../../../../src/ui/parts/tool/parts.ts';
import { RhythmPage } from '../../../../src/ui/rhythm/RhythmPage.tsx';
import { keyNamed, section, slots, song } from '../../../support/music.ts';
import { pageParts } from '../../../support/pageParts.ts';
import { pattern } from '../../../support/patterns.ts';
import { project } from '../../../support/project.ts';
import { notationOf } from '../../../support/sheets.ts';

/** Triplets, ties over beats and bar lines, rests, accents and short notes. */
function touched(p: Pattern): Pattern {
  const touches = ['accent', 'plain', 'ghost'] as const;
  const right = p.right.map((hit, i) => ({ ...hit, touch: touches[i % 3]!, held: i % 2 === 0 }));
  return { ...p, right };
}

const inFour = touched(
  pattern(
    '4/4',
    { left: 'R..5--..8-R-R---R.....', right: '.CCC-..TC-C--.CC.C-C.C' },
    { bars: 2, divisions: [3, 2, 4, 2, 3, 2, 2, 4], name: 'In four' },
  ),
);

const inSix = touched(
  pattern(
    '6/8',
    { left: 'R-----5---8-R-----------', right: '..C.C-..C-C-----C.C.T.B.' },
    { bars: 2, name: 'In six' },
  ),
);

/** A bass that is held under moving notes. */
function heldBass(): Pattern {
  const moving = pattern('4/4', { left: '.5858585', right: 'C---C---' });
  const held = { ...moving.left[0]!, at: 0, length: 1920, play: ['root' as const] };
  return { ...moving, left: [held, ...moving.left] };
}

const SHEETS: readonly (readonly [string, Notation])[] = [
  ['4/4 with triplets and ties', notationOf(inFour, '| Cm7 / F7 / | B♭maj7 |', keyOf('B♭'))],
  ['6/8 in sharps', notationOf(inSix, '| F♯m7♭5 | B7♭9 |', keyOf('E'))],
  ['two voices on a staff', notationOf(heldBass(), '| A♭ / B / |', keyOf('C'))],
  [
    'many short notes under words',
    notationOf(pattern('4/4', { right: 'C'.repeat(16) }), '| Dm7♭5 G7 Cm F7 |', {
      words: [{ bar: 0, text: 'sixteenths swing: easy swing 1.5 : 1' }],
    }),
  ],
];

function keyOf(name: string): Partial<Notation> {
  return { key: keyNamed(name) };
}

let root: Root;
let place: HTMLElement;

beforeEach(async () => {
  await page.viewport(1024, 768);
  document.documentElement.dataset['theme'] = 'paper';
  place = document.createElement('div');
  document.body.replaceChildren(place);
  root = createRoot(place);
});

afterEach(() => {
  vi.unstubAllGlobals();
  root.unmount();
});

async function show(notation: Notation): Promise<SVGSVGElement> {
  root.render(
    <Suspense>
      <NotationView notation={notation} size="flow" />
    </Suspense>,
  );
  await expect.element(page.getByRole('img')).toBeVisible();
  return page.getByRole('img').element() as SVGSVGElement;
}

type Box = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly text: string;
};

/** Where a text has ink on the screen; the boxes of its font are far larger. */
function inkBox(text: SVGTextElement): Box {
  const style = getComputedStyle(text);
  const context = document.createElement('canvas').getContext('2d')!;
  context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  context.textAlign = style.textAnchor === 'middle' ? 'center' : 'left';
  const ink = context.measureText(text.textContent);
  const [x, y] = [text.x.baseVal[0]!.value, text.y.baseVal[0]!.value];
  const matrix = text.getScreenCTM()!;
  const from = new DOMPoint(x - ink.actualBoundingBoxLeft, y - ink.actualBoundingBoxAscent);
  const to = new DOMPoint(x + ink.actualBoundingBoxRight, y + ink.actualBoundingBoxDescent);
  const [a, b] = [from.matrixTransform(matrix), to.matrixTransform(matrix)];
  return { left: a.x, right: b.x, top: a.y, bottom: b.y, text: text.textContent };
}

function inkBoxes(svg: Element, selector: string): Box[] {
  return [...svg.querySelectorAll<SVGTextElement>(selector)].map(inkBox);
}

/** Whether two boxes share more than a hair; canvas rounds ink up to whole pixels. */
function meet(a: Box, b: Box): boolean {
  const hair = 1.5;
  return (
    a.left < b.right - hair &&
    b.left < a.right - hair &&
    a.top < b.bottom - hair &&
    b.top < a.bottom - hair
  );
}

function collisions(some: readonly Box[], others: readonly Box[]): string[] {
  return some.flatMap((a) =>
    others.filter((b) => b !== a && meet(a, b)).map((b) => `${a.text} over ${b.text}`),
  );
}

/** Every event of the sheet, with its hand. */
function eventsOf({ sheet }: Notation): (readonly [string, SheetEvent])[] {
  return sheet.bars.flatMap((bar) =>
    STAVES.flatMap((hand) => bar.staves[hand].flat().map((event) => [hand, event] as const)),
  );
}

const HEADS = /^[\uE0A2-\uE0A4]$/;

describe.each(SHEETS)('%s', (_, notation) => {
  it('every note of the sheet is a head at its own height', async () => {
    const svg = await show(notation);
    const drawn = [...svg.querySelectorAll<SVGGElement>('.vf-event')].flatMap((group) =>
      [...group.querySelectorAll<SVGTextElement>('.vf-notehead > text')]
        .filter((text) => HEADS.test(text.textContent))
        .map((text) => [group.dataset['hand'], group.dataset['tick'], headY(text)].join(' ')),
    );
    const written = eventsOf(notation).flatMap(([hand, event]) =>
      event.notes.map(({ pitch }) => {
        const y = -5 * staffPlace(pitch, hand as 'left' | 'right');
        return [hand, event.startTick, y].join(' ');
      }),
    );
    expect(drawn.toSorted()).toEqual(written.toSorted());
  });

  it('every rest, beam, tie and tuplet of the sheet is drawn', async () => {
    const svg = await show(notation);
    const events = eventsOf(notation).map(([, event]) => event);
    const count = (selector: string) => svg.querySelectorAll(selector).length;
    const rests = [...svg.querySelectorAll('.vf-notehead > text')].filter(
      (text) => text.textContent >= '\uE4E0' && text.textContent <= '\uE4FF',
    );
    expect(rests).toHaveLength(events.filter(({ notes }) => notes.length === 0).length);
    expect(count('.vf-beam')).toBe(events.filter(({ beam }) => beam === 'begin').length);
    expect(count('.vf-notation-tuplet')).toBe(
      events.filter(({ tupletEdge }) => tupletEdge === 'start').length,
    );
    const tied = events.flatMap(({ notes }) => notes.filter(({ tiedToNext }) => tiedToNext));
    expect(count('.notation-tie')).toBeGreaterThanOrEqual(tied.length);
  });

  it.each([1024, 560])('nothing written lies outside the picture, %i px wide', async (width) => {
    await page.viewport(width, 768);
    const svg = await show(notation);
    const frame = svg.getBoundingClientRect();
    const outside = inkBoxes(svg, 'text').filter(
      ({ left, right, top, bottom }) =>
        left < frame.left - 1 ||
        right > frame.right + 1 ||
        top < frame.top - 1 ||
        bottom > frame.bottom + 1,
    );
    expect(outside).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('chord symbols, counts and accidentals stand clear of all others', async () => {
    const svg = await show(notation);
    const notes = inkBoxes(svg, '.vf-event text');
    const chords = inkBoxes(svg, '.notation-chord');
    const counts = inkBoxes(svg, '.notation-count, .notation-silentCount');
    const signs = inkBoxes(svg, '.notation-sign');
    expect(collisions(chords, [...notes, ...chords])).toEqual([]);
    expect(collisions(counts, [...notes, ...counts])).toEqual([]);
    expect(collisions(signs, [...notes, ...signs.filter(isNoFigure)])).toEqual([]);
    expect(collisions(inkBoxes(svg, '.notation-words'), [...notes, ...chords])).toEqual([]);
    for (const event of svg.querySelectorAll('.vf-event')) {
      const others = [...svg.querySelectorAll(`.vf-event[data-hand=${handOf(event)}]`)];
      const later = others.filter((other) => tickOf(other) !== tickOf(event));
      const headsIn = (group: Element) => inkBoxes(group, '.vf-notehead > text');
      expect(collisions(inkBoxes(event, '.vf-notehead text'), later.flatMap(headsIn))).toEqual([]);
      const rests = headsIn(event).filter(({ text }) => !HEADS.test(text));
      const beside = others.filter((other) => other !== event).flatMap(headsIn);
      expect(collisions(rests, beside)).toEqual([]);
    }
  });
});

/** Figures of a time signature stand so close that they touch. */
function isNoFigure({ text }: Box): boolean {
  return !(text >= '\uE080' && text <= '\uE08A');
}

function handOf(event: Element): string {
  return event.getAttribute('data-hand') ?? '';
}

function tickOf(event: Element): string {
  return event.getAttribute('data-tick') ?? '';
}

/** Height of a head under the middle line of its staff, in drawing units. */
function headY(text: SVGTextElement): number {
  const system = text.closest('.notation-system')!;
  const lines = [...system.querySelectorAll('.notation-staff-line')].map((line) =>
    Number(/M[\d.]+ ([\d.]+)H/.exec(line.getAttribute('d') ?? '')?.[1]),
  );
  const isRight = text.closest('.vf-event')?.getAttribute('data-hand') === 'right';
  const middle = lines[isRight ? 2 : 7]!;
  return Math.round((text.y.baseVal[0]!.value - middle) * 100) / 100 + 0;
}

/** The middles of boxes from left to right, those in a column once. */
function centres(boxes: readonly Box[]): number[] {
  return [...new Set(boxes.map(({ left, right }) => Math.round((left + right) / 2)))];
}

it('counts stand under the middle of the heads they count', async () => {
  const svg = await show(notationOf(pattern('4/4', { right: 'CCCCCCCC' }), '| C |'));
  const heads = centres(
    inkBoxes(svg, '.vf-notehead > text').filter(({ text }) => HEADS.test(text)),
  );
  const counts = centres(inkBoxes(svg, '.notation-count'));
  expect(counts).toHaveLength(heads.length);
  for (const [i, x] of counts.entries()) expect(Math.abs(x - heads[i]!)).toBeLessThanOrEqual(2);
});

it('uses the fonts that come with it, in the ink of the theme', async () => {
  const svg = await show(SHEETS[0]![1]);
  expect(document.fonts.check('40px Leland', '\uE0A4')).toBe(true);
  const ink = getComputedStyle(svg).color;
  for (const part of svg.querySelectorAll('.vf-notehead text, .vf-beam path, .vf-stem path')) {
    const { fill, stroke } = getComputedStyle(part);
    expect([fill, stroke]).toContain(ink);
    expect([ink, 'none']).toContain(fill);
  }
});

it('prints pages of its own, and takes them away afterwards', async () => {
  const asked: Element[] = [];
  vi.stubGlobal('print', () => asked.push(...document.querySelectorAll('.notation-page')));
  await show(SHEETS[0]![1]);
  await page.getByRole('button', { name: 'Print' }).click();
  expect(asked.length).toBe(1);
  expect(asked[0]!.querySelector('.notation-title')?.textContent).toBe('In four');
  expect(asked[0]!.querySelectorAll('.vf-event').length).toBeGreaterThan(10);
  expect(getComputedStyle(asked[0]!.parentElement!).display).toBe('none');
  window.dispatchEvent(new Event('afterprint'));
  await expect.poll(() => document.querySelector('.notation-page')).toBeNull();
});

it('is told in words and has no fault that an accessibility scan finds', async () => {
  await show(SHEETS[0]![1]);
  await expect
    .element(page.getByRole('img', { name: /^In four, 2 bars of 4\/4 in B flat major\. Bar 1/ }))
    .toBeVisible();
  const { violations } = await axe.run(place, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});

it('shows the pattern of the Rhythm page instead of its spine, and the spine again', async () => {
  const parts = pageParts(project({ patterns: [inFour] }));
  place.style.height = '600px';
  root.render(
    <PartsContext value={parts}>
      <RhythmPage />
    </PartsContext>,
  );
  const toggle = page.getByRole('button', { name: 'Notes' });
  await toggle.click();
  await expect.element(page.getByRole('img', { name: /^In four, 2 bars of 4\/4/ })).toBeVisible();
  expect(page.getByRole('grid').elements()).toEqual([]);
  await toggle.click();
  await expect.element(page.getByRole('grid')).toBeVisible();
});

it('shows the chords of a section on the Hands page as whole notes', async () => {
  const verse = section('verse', { slots: slots('| C / F / | N.C. | G7 |') });
  const parts = pageParts(project({ song: song([verse], 'verse') }), { notated: ['hands'] });
  root.render(
    <PartsContext value={parts}>
      <HandsPage />
    </PartsContext>,
  );
  const picture = page.getByRole('img', { name: /^verse, chords in C major\. Bar 1, C, F:/ });
  await expect.element(picture).toBeVisible();
  const heads = [...picture.element().querySelectorAll('.vf-notehead > text')];
  expect(new Set(heads.map((head) => head.textContent))).toEqual(new Set(['\uE0A2', '\uE4E3']));
});
