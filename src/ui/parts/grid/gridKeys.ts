import type { HandName } from '../../../core/voicing/voicing.ts';

/** What a key does in the grid. `by` counts steps, rightwards or later positive. */
export type GridAction =
  | { readonly kind: 'go'; readonly columns: number; readonly rows: number }
  | { readonly kind: 'go-to'; readonly place: 'row start' | 'row end' | 'grid start' | 'grid end' }
  | { readonly kind: 'act' }
  | { readonly kind: 'remove' }
  | { readonly kind: 'lengthen'; readonly by: 1 | -1 }
  | { readonly kind: 'move'; readonly by: 1 | -1 }
  | { readonly kind: 'again' }
  | { readonly kind: 'touch' }
  | { readonly kind: 'held' }
  | { readonly kind: 'leads' }
  | { readonly kind: 'pull'; readonly hand: HandName }
  | { readonly kind: 'tone'; readonly key: string; readonly how: 'only' | 'also' };

type GridKey = {
  readonly key: string;
  readonly shift?: boolean;
  readonly alt?: boolean;
  readonly control?: boolean;
  readonly action: GridAction;
};

/** Keys of the grid, as `KeyboardEvent.key` names them; tones have a table of their own. */
const GRID_KEYS: readonly GridKey[] = [
  { key: 'ArrowLeft', action: { kind: 'go', columns: -1, rows: 0 } },
  { key: 'ArrowRight', action: { kind: 'go', columns: 1, rows: 0 } },
  { key: 'ArrowUp', action: { kind: 'go', columns: 0, rows: -1 } },
  { key: 'ArrowDown', action: { kind: 'go', columns: 0, rows: 1 } },
  { key: 'Home', action: { kind: 'go-to', place: 'row start' } },
  { key: 'End', action: { kind: 'go-to', place: 'row end' } },
  { key: 'Home', control: true, action: { kind: 'go-to', place: 'grid start' } },
  { key: 'End', control: true, action: { kind: 'go-to', place: 'grid end' } },
  { key: 'Enter', action: { kind: 'act' } },
  { key: ' ', action: { kind: 'act' } },
  { key: 'Delete', action: { kind: 'remove' } },
  { key: 'Backspace', action: { kind: 'remove' } },
  { key: 'ArrowRight', shift: true, action: { kind: 'lengthen', by: 1 } },
  { key: 'ArrowLeft', shift: true, action: { kind: 'lengthen', by: -1 } },
  { key: 'ArrowRight', alt: true, action: { kind: 'move', by: 1 } },
  { key: 'ArrowLeft', alt: true, action: { kind: 'move', by: -1 } },
  { key: 'a', action: { kind: 'again' } },
  { key: 't', action: { kind: 'touch' } },
  { key: 's', action: { kind: 'held' } },
  { key: 'n', action: { kind: 'leads' } },
  { key: 'r', action: { kind: 'pull', hand: 'right' } },
  { key: 'l', action: { kind: 'pull', hand: 'left' } },
];

/** The list of the grid's keys as it is shown, in the words of the page. */
export const GRID_KEY_LIST: readonly (readonly [keys: string, does: string])[] = [
  ['Arrows, Home, End', 'go to another place'],
  ['Enter or Space', 'add a hit; on a hit, go to its buttons; on a beat, divide it'],
  ['Delete', 'take the hit away'],
  ['Shift + ← →', 'shorter, longer'],
  ['Alt + ← →', 'earlier, later'],
  ['A', 'again: the hit once more, right behind it; on an empty place the one before'],
  ['T', 'touch: ghost, plain, accent'],
  ['S', 'short or held'],
  ['N', 'leads into the next chord, or not'],
  ['1 3 5 6 7 8', 'left hand: that degree; 0 tenth, 4 low fifth, 9 approach'],
  ['0, 1 – 6', 'right hand: chord, one voice; 7 bottom, 8 middle, 9 top, U upper part'],
  ['Shift + figure', 'this tone as well, or not any more'],
  ['Shift + drawing', 'one long hit instead of one on every step'],
  ['Second mouse button', 'rubs out; so does the other end of a pen'],
  ['R, L', 'on a stroke of the band: pull it into the right or left hand'],
];

/** What of a `KeyboardEvent` decides the action. */
export type GridKeyPress = Pick<
  KeyboardEvent,
  'key' | 'code' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'
>;

/** The figure or the letter U that chooses a tone; Shift changes `key`, so the place of the key counts for figures. */
function toneKeyOf({ key, code }: GridKeyPress): string | undefined {
  const figure = /^(?:Digit|Numpad)(\d)$/.exec(code)?.[1];
  if (figure !== undefined) return figure;
  const letter = key.toLowerCase();
  return /^[\du]$/.test(letter) ? letter : undefined;
}

/** What a key press means in the grid; undefined where it means nothing there and goes on to the page. */
export function gridActionOf(press: GridKeyPress): GridAction | undefined {
  const control = press.ctrlKey || press.metaKey;
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  const found = GRID_KEYS.find(
    (each) =>
      each.key === key &&
      (each.control ?? false) === control &&
      (each.shift ?? false) === press.shiftKey &&
      (each.alt ?? false) === press.altKey,
  );
  if (found) return found.action;
  const tone = control || press.altKey ? undefined : toneKeyOf(press);
  return tone === undefined
    ? undefined
    : { kind: 'tone', key: tone, how: press.shiftKey ? 'also' : 'only' };
}
