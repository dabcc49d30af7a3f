import { useEffect } from 'react';
import { commandOf, type KeyCommand } from './keyBindings.ts';
import { type Parts, useParts } from './parts.ts';

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

/** Pages on which a pedal is used. */
const PEDAL_PAGES: readonly string[] = ['drill', 'play'];

/** What keeps the focus once it was touched, and would take a pedal's keys for its own. */
const KEEPS_FOCUS = {
  click: 'button, [type=checkbox], [type=radio], [type=range]',
  change: 'select, [type=range]',
};

/**
 * On Drill and Play, what was pressed or set by a finger or the mouse lets the keys go again, so that
 * a pedal that sends keys is not taken for a second press of it. Who moves by keys keeps the focus, as
 * do sheets and what pops up.
 */
export function useFocusLetGo(): void {
  const { view } = useParts();
  useEffect(() => {
    let isTouched = false;
    const touched = (event: Event) => {
      isTouched = event.type === 'pointerdown';
    };
    const letGo = (event: Event) => {
      const focused = document.activeElement;
      const isIts = KEEPS_FOCUS[event.type as keyof typeof KEEPS_FOCUS];
      if (!isTouched || !(focused instanceof HTMLElement) || !focused.matches(isIts)) return;
      if (!PEDAL_PAGES.includes(view.snapshot().page)) return;
      if (!focused.closest('dialog, [popover]')) focused.blur();
    };
    const listened = [
      ['pointerdown', touched],
      ['keydown', touched],
      ['click', letGo],
      ['change', letGo],
    ] as const;
    for (const [type, listener] of listened)
      addEventListener(type, listener, { capture: type.endsWith('down') });
    return () => {
      for (const [type, listener] of listened)
        removeEventListener(type, listener, { capture: type.endsWith('down') });
    };
  }, [view]);
}
