import { useEffect } from 'react';
import { type Parts, useParts } from '../parts/tool/parts.ts';
import { commandOf, type KeyCommand } from './keyBindings.ts';

/** Elements in which a key means what is typed or chosen there. */
const TAKES_KEYS =
  'input:not([type=range]):not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable], dialog[open]';

/** Elements in which arrows, Home and the page keys move within. */
const MOVES_WITHIN =
  'input:not([type=checkbox]), [role=grid], [role=toolbar], [role=menu], [role=radiogroup], [role=tablist], [popover]';

const MOVES = /^(Arrow|Page|Home)/;

/** What Space presses or ticks, and Enter as far as it does. */
const PRESSED = {
  ' ': 'button, a, summary, [type=checkbox], [type=radio]',
  Enter: 'button, a, summary',
};

function isTakenWithin(target: Element, key: string): boolean {
  if (MOVES.test(key)) return target.closest(MOVES_WITHIN) !== null;
  return (key === ' ' || key === 'Enter') && target.closest(PRESSED[key]) !== null;
}

/** The command of a key that nothing on the page has used and that the element with the focus does not need. */
function commandHere(event: KeyboardEvent, { view }: Parts): KeyCommand | undefined {
  const command = commandOf(event, view.snapshot().page);
  const target = event.target instanceof Element ? event.target : undefined;
  if (!command || event.defaultPrevented) return undefined;
  const isUndo = command.kind === 'undo' || command.kind === 'redo';
  if (target?.closest(TAKES_KEYS) && !(isUndo && !target.closest('input, textarea')))
    return undefined;
  return target && isTakenWithin(target, event.key) ? undefined : command;
}

/** One listener for all keys of the table; keys that a text, a grid or a dialog has used are left alone. */
export function useKeys(carryOut: (command: KeyCommand, parts: Parts) => void): void {
  const parts = useParts();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const command = commandHere(event, parts);
      if (!command) return;
      event.preventDefault();
      carryOut(command, parts);
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [parts, carryOut]);
}
