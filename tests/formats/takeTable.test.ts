import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCsv } from '../../src/formats/csv.ts';
import { isoMoment, takesAsCsv, takeTable } from '../../src/formats/takeTable.ts';
import { valueOf } from '../support/music.ts';
import { takeRecord, takeRecords } from '../support/takeRecords.ts';
import { expectedHit, scoreOf } from '../support/takes.ts';

const CONTEXT = {
  song: 'Slow, "blue" train',
  nameOf: ({ kind }: { readonly kind: string }) => `the ${kind}`,
  aheadOfUtcMinutes: () => 60,
};

function records(text: string): Record<string, string>[] {
  const [names, ...rows] = valueOf(parseCsv(text));
  return rows.map((row) => Object.fromEntries(row.map((field, i) => [names![i]!, field])));
}

describe('the table of takes', () => {
  it('has a row for each hand, the first take first', () => {
    const score = scoreOf([
      [expectedHit(0, 'left'), 12],
      [expectedHit(0.5, 'left'), 'missed'],
      [expectedHit(1, 'right'), -7.125],
      [expectedHit(1.5, 'right'), -2.125],
    ]);
    const [first, second, third] = records(
      takesAsCsv(
        [
          takeRecord({ atMs: 86_400_000 }),
          takeRecord({ atMs: 1000, target: { kind: 'song' }, bpm: 83.3333, level: 2, score }),
        ],
        CONTEXT,
      ),
    );
    const take = {
      take: '1',
      started: '1970-01-01T01:00:01+01:00',
      song: 'Slow, "blue" train',
      kind: 'song',
      practised: 'the song',
      tempo_bpm: '83.33',
      level: '2',
      hands: 'both',
      input: 'hands',
      times_through: '1',
      clean: 'no',
    };
    expect(first).toMatchObject({
      ...take,
      hand: 'left',
      expected: '2',
      hit: '1',
      missed: '1',
      late_ms: '12',
      spread_ms: '',
    });
    expect(second).toMatchObject({ ...take, hand: 'right', hit: '2', missed: '0' });
    expect(Number(second!['late_ms'])).toBeCloseTo(-4.625, 1);
    expect(third).toMatchObject({ take: '2', hand: 'left', level: '', clean: 'yes' });
  });

  it('is read as it was made, for any takes, in columns of one length', () =>
    fc.assert(
      fc.property(fc.array(takeRecords(), { maxLength: 6 }), (takes) => {
        const table = takeTable(takes, CONTEXT);
        expect(valueOf(parseCsv(takesAsCsv(takes, CONTEXT)))).toEqual(table);
        expect(new Set(table.map((row) => row.length)).size).toBe(1);
        expect(table.length).toBeGreaterThan(takes.length);
        expect(table.flat().some((field) => /NaN|undefined|Infinity|\d,\d/.test(field))).toBe(
          false,
        );
      }),
    ));

  it('is explained, column by column', () => {
    const page = readFileSync(new URL('../../docs/practice-table.md', import.meta.url), 'utf8');
    for (const name of takeTable([], CONTEXT)[0]!) expect(page).toContain(`\`${name}\``);
  });

  // ISO 8601 with the offsets of Kathmandu, New York in winter, and UTC.
  it.each([
    [345, '2026-01-01T05:45:00+05:45'],
    [-300, '2025-12-31T19:00:00-05:00'],
    [0, '2026-01-01T00:00:00+00:00'],
  ])('tells a moment on the clock of the place, %i minutes ahead', (ahead, text) =>
    expect(isoMoment(Date.UTC(2026, 0, 1), ahead)).toBe(text),
  );
});
