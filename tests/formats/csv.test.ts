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
