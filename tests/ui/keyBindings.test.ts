import { expect, it } from 'vitest';
import { commandOf, KEY_BINDINGS, type KeyPress } from '../../src/ui/keyBindings.ts';

function press(key: string, held: Partial<KeyPress> = {}): KeyPress {
  return { key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held };
}

it('finds each binding of the table by its own key', () => {
  for (const { key, control, shift, command } of KEY_BINDINGS)
    expect(commandOf(press(key, { ctrlKey: control ?? false, shiftKey: shift ?? false }))).toEqual(
      command,
    );
});

it('gives every key one meaning only', () => {
  const keys = KEY_BINDINGS.map(({ key, control, shift }) => `${control} ${shift} ${key}`);
  expect(new Set(keys).size).toBe(keys.length);
});

it('takes Command for Control, and a capital letter for a small one', () => {
  expect(commandOf(press('Z', { metaKey: true, shiftKey: true }))).toEqual({ kind: 'redo' });
  expect(commandOf(press('C', { shiftKey: true }))).toEqual({ kind: 'click' });
});

it('leaves a key with Control alone where only the plain key is bound', () => {
  expect(commandOf(press('c', { ctrlKey: true }))).toBeUndefined();
  expect(commandOf(press('1', { altKey: true }))).toBeUndefined();
  expect(commandOf(press('q'))).toBeUndefined();
});
