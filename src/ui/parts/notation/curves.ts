import type { Units } from './glyphs.ts';

/** Tie from one head to the next: thin at the ends, thickest in the middle, arched to one side. */
export function tiePath(
  from: { readonly x: Units; readonly y: Units },
  toX: Units,
  side: 'above' | 'below',
): string {
  const { x, y } = from;
  const length = toX - x;
  const out = side === 'above' ? -1 : 1;
  const arch = out * Math.min(11, 4 + 0.09 * length);
  const inner = arch - out * 2.6;
  const [c1, c2] = [x + 0.25 * length, toX - 0.25 * length];
  return path`M${x} ${y}C${c1} ${y + arch},${c2} ${y + arch},${toX} ${y}C${c2} ${y + inner},${c1} ${y + inner},${x} ${y}Z`;
}

/** One bracket round a ghost note, open to the right (`left`) or to the left. */
export function bracketPath(x: Units, top: Units, bottom: Units, side: 'left' | 'right'): string {
  const out = side === 'left' ? -1 : 1;
  const middle = (top + bottom) / 2;
  return path`M${x} ${top}Q${x + 8 * out} ${middle},${x} ${bottom}Q${x + 5.5 * out} ${middle},${x} ${top}Z`;
}

/** Path data with its numbers to a hundredth of a unit. */
function path(strings: TemplateStringsArray, ...numbers: readonly number[]): string {
  return String.raw(strings, ...numbers.map((n) => Math.round(n * 100) / 100));
}

/** The brace of two staves, from the top of one to the bottom of the other, its point to the left. */
export function bracePath(x: Units, top: Units, bottom: Units): string {
  const height = bottom - top;
  const middle = (top + bottom) / 2;
  const at = (share: number) => top + share * height;
  const point = x - 11;
  return [
    path`M${x} ${top}`,
    path`C${x - 16} ${at(0.2)},${x + 2} ${at(0.38)},${point} ${middle}`,
    path`C${x + 2} ${at(0.62)},${x - 16} ${at(0.8)},${x} ${bottom}`,
    path`C${x - 10} ${at(0.82)},${x + 8} ${at(0.6)},${point} ${middle}`,
    path`C${x + 8} ${at(0.4)},${x - 10} ${at(0.18)},${x} ${top}Z`,
  ].join('');
}
