/** What a reader of files calls a kind of value, and what people do. */
const KINDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  Array: 'a list',
  Object: 'values with names',
  undefined: 'nothing',
  null: 'nothing',
  never: 'nothing that has this name',
  '!0': 'something that is not empty',
  '""': 'an empty text',
};

const BOUND = /^([<>]=?)(.+)$/;

const BOUNDS: Readonly<Record<string, (bound: string) => string>> = {
  '>=': (bound) => `${bound} or more`,
  '<=': (bound) => `${bound} or less`,
  '>': (bound) => `more than ${bound}`,
  '<': (bound) => `less than ${bound}`,
};

/** What belongs at a place of a file, as the error has it, in words: `>=1` is “1 or more”. */
export function expectedWords(expected: string): string {
  const kind = KINDS[expected];
  if (kind) return kind;
  const [, sign = '', bound = ''] = BOUND.exec(expected) ?? [];
  const inWords = BOUNDS[sign];
  if (inWords) return inWords(bound);
  if (expected.startsWith('Invalid integer') || expected.startsWith('Invalid safe integer'))
    return 'a whole number';
  return expected.startsWith('(') ? expected.slice(1, -1).replaceAll(' | ', ' or ') : expected;
}

/** What stands at a place of a file, as the error has it, in words; `expected` tells a length from a number. */
export function foundWords(found: string, expected: string): string {
  if (expected === '!0') return 'nothing';
  return KINDS[found] ?? found;
}
