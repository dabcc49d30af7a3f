import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatCsv, parseCsv } from '../../src/formats/csv.ts';
import { errorOf, valueOf } from '../support/music.ts';

describe('comma-separated values', () => {
  it('are read as they were written, whatever stands in the fields', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.array(fc.oneof(fc.string(), fc.constantFrom('', ',', '"', '\r\n', '\n', 'a"b,c')), {
            minLength: 1,
            maxLength: 4,
          }),
          { maxLength: 5 },
        ),
        (rows) => {
          expect(valueOf(parseCsv(formatCsv(rows)))).toEqual(rows);
        },
      ),
    ));

  // RFC 4180, section 2, rules 1 to 7.
  it.each([
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
    [
      'a,b\nc,',
      [
        ['a', 'b'],
        ['c', ''],
      ],
    ],
    ['', []],
  ])('are read from %j', (text, rows) => expect(valueOf(parseCsv(text))).toEqual(rows));

  it.each([
    ['a,"b', 2],
    ['a,"b"c', 2],
    ['a,b"c', 2],
  ])('are not read from %j', (text, at) =>
    expect(errorOf(parseCsv(text))).toEqual({ kind: 'stray-quote', at }),
  );
});

describe('a field that a spreadsheet would take for a formula', () => {
  // The first characters: OWASP, CSV Injection, https://owasp.org/www-community/attacks/CSV_Injection
  it.each(['=1+1', '+A1', '-A1', '@SUM(A1)', '\t=1', ' =1', '=HYPERLINK("x","y")', '＝1', "'=1"])(
    '%j is written as a text and read as it was',
    (field) => {
      const text = formatCsv([[field]]);
      expect(text.replace(/^"/, '').startsWith("'")).toBe(true);
      expect(valueOf(parseCsv(text))).toEqual([[field]]);
    },
  );

  it.each(['-12.5', '+3', '12', 'a=b', '', "'s", 'Blue - slow'])('%j stays as it is', (field) =>
    expect(formatCsv([[field]])).toBe(`${field}\r\n`),
  );
});
