import { err, ok, type Result } from '../core/result.ts';

/** A table as text of rows of fields. */
export type CsvTable = readonly (readonly string[])[];

/** What a spreadsheet would reckon out in place of showing it, also behind blanks; with apostrophes it is a text. */
const FORMULA = /^'*(?:[\t\r\n]|\s*[=+\-@＝＋－＠])/;
const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;

/** A field that a spreadsheet takes for what it is: before a formula stands an apostrophe. */
function asText(field: string): string {
  return FORMULA.test(field) && !NUMBER.test(field) ? `'${field}` : field;
}

function formatField(field: string): string {
  const text = asText(field);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The field that `asText` made a text of. */
function withoutApostrophe(field: string): string {
  return field.startsWith("'") && FORMULA.test(field) ? field.slice(1) : field;
}

/**
 * A table as comma-separated values (RFC 4180): every row ends with CRLF, fields are quoted where they
 * must be. A field that a spreadsheet would take for a formula gets an apostrophe in front; numbers
 * with a sign stay numbers.
 */
export function formatCsv(rows: CsvTable): string {
  return rows.map((row) => `${row.map(formatField).join(',')}\r\n`).join('');
}

/** A quote that is not closed, or that something else than a comma or a line's end follows; `at` counts characters. */
export type CsvError = { readonly kind: 'stray-quote'; readonly at: number };

const QUOTED = /"((?:[^"]|"")*)"(?=,|\r?\n|$)/y;
const PLAIN = /[^",\r\n]*(?=,|\r?\n|$)/y;
const LINE_END = /\r?\n/y;

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** The table of a text of comma-separated values (RFC 4180), as `formatCsv` was given it; lines may also end with LF alone, the last one with neither. */
export function parseCsv(text: string): Result<CsvTable, CsvError> {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length || row.length > 0) {
    const quoted = matchAt(QUOTED, text, at);
    const field = quoted ?? matchAt(PLAIN, text, at);
    if (!field) return err({ kind: 'stray-quote', at });
    row.push(withoutApostrophe(quoted ? quoted[1]!.replaceAll('""', '"') : field[0]));
    at += field[0].length;
    if (text[at] === ',') {
      at++;
      continue;
    }
    rows.push(row);
    row = [];
    at += matchAt(LINE_END, text, at)?.[0].length ?? 0;
  }
  return ok(rows);
}
