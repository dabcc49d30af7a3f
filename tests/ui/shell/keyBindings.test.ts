import { expect, it } from 'vitest';
import { PAGES } from '../../../src/ui/parts/tool/viewState.ts';
import { commandOf, KEY_BINDINGS, type KeyPress } from '../../../src/ui/shell/keyBindings.ts';

function press(key: string, held: Partial<KeyPress> = {}): KeyPress {
  return { key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held };
}

it('finds each binding of the table by its own key', () => {
  for (const { key, control, shift, page, command } of KEY_BINDINGS) {
    const held = { ctrlKey: control ?? false, shiftKey: shift ?? false };
    expect(commandOf(press(key, held), page ?? 'map')).toEqual(command);
  }
});

it.each(PAGES)('gives every key one meaning only on %s', (page) => {
  const keys = KEY_BINDINGS.filter((binding) => (binding.page ?? page) === page).map(
    ({ key, control, shift }) => `${control} ${shift} ${key}`,
  );
  expect(new Set(keys).size).toBe(keys.length);
});

it('lets a page-turn pedal, of any kind, climb rungs on Drill and change sections on Play', () => {
  for (const key of ['PageDown', 'ArrowRight', 'ArrowDown']) {
    expect(commandOf(press(key), 'drill')).toEqual({ kind: 'rung', by: 1 });
    expect(commandOf(press(key), 'play')).toEqual({ kind: 'section', by: 1 });
    expect(commandOf(press(key), 'rhythm')).toBeUndefined();
  }
  for (const key of ['PageUp', 'ArrowLeft', 'ArrowUp']) {
    expect(commandOf(press(key), 'drill')).toEqual({ kind: 'rung', by: -1 });
    expect(commandOf(press(key), 'play')).toEqual({ kind: 'section', by: -1 });
  }
});

it.each(['drill', 'play'] as const)('has every step of practising on keys on %s', (page) => {
  const kinds = (key: string) => commandOf(press(key), page)?.kind;
  expect([' ', 'Enter'].map(kinds)).toEqual(['play-or-stop', 'play-or-stop']);
  expect(['-', '+'].map(kinds)).toEqual(['slower', 'faster']);
  expect(commandOf(press('Home'), page)).toMatchObject({ by: 0 });
});

it('takes Command for Control, and a capital letter for a small one', () => {
  expect(commandOf(press('Z', { metaKey: true, shiftKey: true }), 'map')).toEqual({ kind: 'redo' });
  expect(commandOf(press('C', { shiftKey: true }), 'map')).toEqual({ kind: 'click' });
});

it('leaves a key with Control alone where only the plain key is bound', () => {
  expect(commandOf(press('c', { ctrlKey: true }), 'map')).toBeUndefined();
  expect(commandOf(press('1', { altKey: true }), 'map')).toBeUndefined();
  expect(commandOf(press('q'), 'map')).toBeUndefined();
});
