import { useEffect } from 'react';
import { useParts } from '../parts/tool/parts.ts';

/** Pages on which a pedal is used. */
const PEDAL_PAGES: readonly string[] = ['drill', 'play'];

/** What keeps the focus once it was pressed or set, and would take a pedal's keys for its own. */
const PRESSED = 'button, [type=checkbox], [type=radio], [type=range]';
const SET = 'select, [type=range]';

/**
 * On Drill and Play, what was pressed or set by a finger or the mouse lets the keys go again, so that
 * a pedal that sends keys is not taken for a second press of it. Who moves by keys keeps the focus, as
 * do sheets and what pops up.
 */
export function useFocusLetGo(): void {
  const { view } = useParts();
  useEffect(() => {
    const ending = new AbortController();
    const { signal } = ending;
    let isTouched = false;
    const letGo = (which: string) => {
      const focused = document.activeElement;
      if (!isTouched || !(focused instanceof HTMLElement) || !focused.matches(which)) return;
      if (!PEDAL_PAGES.includes(view.snapshot().page)) return;
      if (!focused.closest('dialog, [popover]')) focused.blur();
    };
    const touch = (isNow: boolean) => () => {
      isTouched = isNow;
    };
    addEventListener('pointerdown', touch(true), { signal, capture: true });
    addEventListener('keydown', touch(false), { signal, capture: true });
    addEventListener('click', () => letGo(PRESSED), { signal });
    addEventListener('change', () => letGo(SET), { signal });
    return () => ending.abort();
  }, [view]);
}
