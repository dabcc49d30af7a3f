import { PAGES, type Page } from '../parts/tool/viewState.ts';

/** Everything that a key does outside grids and texts. Keys inside a grid or a text belong to that grid or text. */
export type KeyCommand =
  | { readonly kind: 'play-or-stop' }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'page'; readonly page: Page }
  | { readonly kind: 'slower' }
  | { readonly kind: 'faster' }
  | { readonly kind: 'rung'; readonly by: 1 | 0 | -1 }
  | { readonly kind: 'section'; readonly by: 1 | 0 | -1 }
  | { readonly kind: 'click' };

/** One key: as `KeyboardEvent.key` names it, with Control (or Command) where `control` is set. */
export type KeyBinding = {
  readonly key: string;
  readonly control?: boolean;
  readonly shift?: boolean;
  /** The one page on which the key does this; on every page without it. */
  readonly page?: Page;
  readonly command: KeyCommand;
  readonly does: string;
};

/** The keys that go on or back; page-turn pedals send one pair or another of them. */
const TURNS = [
  { key: 'PageDown', by: 1 },
  { key: 'ArrowRight', by: 1 },
  { key: 'ArrowDown', by: 1 },
  { key: 'PageUp', by: -1 },
  { key: 'ArrowLeft', by: -1 },
  { key: 'ArrowUp', by: -1 },
] as const;

const LEADING_WORDS = {
  1: 'Next section, on Play; next rung or stage, on Drill',
  0: 'Back to the section’s start, on Play; this rung again, on Drill',
  [-1]: 'Section before, on Play; rung or stage before, on Drill',
} as const;

/** What a key leads along on the two pages for practising: the form and the ladder. */
function leading(key: string, by: 1 | 0 | -1): KeyBinding[] {
  const does = LEADING_WORDS[by];
  return [
    { key, page: 'play', command: { kind: 'section', by }, does },
    { key, page: 'drill', command: { kind: 'rung', by }, does },
  ];
}

/** The one table of keys: it answers key presses and draws the list of keys. */
export const KEY_BINDINGS: readonly KeyBinding[] = [
  { key: ' ', command: { kind: 'play-or-stop' }, does: 'Play, or stop' },
  ...(['drill', 'play'] as const).map((page) => ({
    key: 'Enter',
    page,
    command: { kind: 'play-or-stop' as const },
    does: 'Play, or stop, on Drill and Play',
  })),
  { key: 'z', control: true, command: { kind: 'undo' }, does: 'Undo' },
  { key: 'z', control: true, shift: true, command: { kind: 'redo' }, does: 'Redo' },
  { key: 'y', control: true, command: { kind: 'redo' }, does: 'Redo' },
  { key: '-', command: { kind: 'slower' }, does: 'Slower' },
  { key: '+', command: { kind: 'faster' }, does: 'Faster' },
  ...TURNS.flatMap(({ key, by }) => leading(key, by)),
  ...leading('Home', 0),
  { key: 'c', command: { kind: 'click' }, does: 'Click on, or off' },
  ...PAGES.map((page, i) => ({
    key: String(i + 1),
    command: { kind: 'page' as const, page },
    does: `Go to ${page[0]!.toUpperCase()}${page.slice(1)}`,
  })),
];

/** What of a `KeyboardEvent` decides which command it is. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** The command of a key press on a page, or undefined where no binding fits. Shift counts only together with Control. */
export function commandOf(press: KeyPress, page: Page): KeyCommand | undefined {
  if (press.altKey) return undefined;
  const control = press.ctrlKey || press.metaKey;
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  return KEY_BINDINGS.find(
    (binding) =>
      binding.key === key &&
      (binding.page ?? page) === page &&
      (binding.control ?? false) === control &&
      (!control || (binding.shift ?? false) === press.shiftKey),
  )?.command;
}
