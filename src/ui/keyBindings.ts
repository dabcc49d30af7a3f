import { PAGES, type Page } from './viewState.ts';

/** Everything that a key does from any page. Keys inside a grid or a text belong to that grid or text. */
export type KeyCommand =
  | { readonly kind: 'play-or-stop' }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'page'; readonly page: Page }
  | { readonly kind: 'slower' }
  | { readonly kind: 'faster' }
  | { readonly kind: 'rung'; readonly by: 1 | -1 }
  | { readonly kind: 'click' };

/** One key: as `KeyboardEvent.key` names it, with Control (or Command) where `control` is set. */
export type KeyBinding = {
  readonly key: string;
  readonly control?: boolean;
  readonly shift?: boolean;
  readonly command: KeyCommand;
  readonly does: string;
};

/** The one table of keys: it answers key presses and draws the list of keys. */
export const KEY_BINDINGS: readonly KeyBinding[] = [
  { key: ' ', command: { kind: 'play-or-stop' }, does: 'Play, or stop' },
  { key: 'z', control: true, command: { kind: 'undo' }, does: 'Undo' },
  { key: 'z', control: true, shift: true, command: { kind: 'redo' }, does: 'Redo' },
  { key: 'y', control: true, command: { kind: 'redo' }, does: 'Redo' },
  { key: '-', command: { kind: 'slower' }, does: 'Slower' },
  { key: '+', command: { kind: 'faster' }, does: 'Faster' },
  { key: 'PageDown', command: { kind: 'rung', by: 1 }, does: 'Next rung (page-turn pedal)' },
  { key: 'PageUp', command: { kind: 'rung', by: -1 }, does: 'Rung before (page-turn pedal)' },
  { key: 'c', command: { kind: 'click' }, does: 'Click on, or off' },
  ...PAGES.map((page, i) => ({
    key: String(i + 1),
    command: { kind: 'page' as const, page },
    does: `Go to ${page[0]!.toUpperCase()}${page.slice(1)}`,
  })),
];

/** What of a `KeyboardEvent` decides which command it is. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/** The command of a key press, or undefined where no binding fits. Shift counts only together with Control. */
export function commandOf(press: KeyPress): KeyCommand | undefined {
  if (press.altKey) return undefined;
  const control = press.ctrlKey || press.metaKey;
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  return KEY_BINDINGS.find(
    (binding) =>
      binding.key === key &&
      (binding.control ?? false) === control &&
      (!control || (binding.shift ?? false) === press.shiftKey),
  )?.command;
}
