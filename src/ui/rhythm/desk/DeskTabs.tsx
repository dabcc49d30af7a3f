import { type KeyboardEvent, useRef } from 'react';

/** What can be done at the desk under the spine. */
export const DESK_TABS = [
  'hit',
  'change',
  'ending',
  'levels',
  'say',
  'tap',
  'numbers',
  'song',
] as const;

export type DeskTab = (typeof DESK_TABS)[number];

/** What the desk shows at first. */
export const FIRST_DESK_TAB: DeskTab = 'hit';

const TAB_NAMES: Readonly<Record<DeskTab, string>> = {
  hit: 'This hit',
  change: 'Change',
  ending: 'Ending',
  levels: 'Levels',
  say: 'Say it',
  tap: 'Tap it',
  numbers: 'Numbers',
  song: 'In the song',
};

/** Name of the element that a tab shows. */
export const DESK_PANEL = 'workshop-desk-panel';

function moved(tab: DeskTab, by: number): DeskTab {
  const at = (DESK_TABS.indexOf(tab) + by + DESK_TABS.length) % DESK_TABS.length;
  return DESK_TABS[at]!;
}

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };

/** The words over the desk's panel; one tab stop, arrows go from word to word. */
export function DeskTabs({
  tab,
  onTab,
}: {
  readonly tab: DeskTab;
  readonly onTab: (tab: DeskTab) => void;
}) {
  const list = useRef<HTMLDivElement>(null);
  const press = (event: KeyboardEvent) => {
    const by = STEPS[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const next = moved(tab, by);
    onTab(next);
    list.current?.querySelector<HTMLElement>(`[data-tab="${next}"]`)?.focus();
  };
  return (
    <div ref={list} role="tablist" aria-label="Desk" className="desk-tabs">
      {DESK_TABS.map((each) => (
        <button
          key={each}
          type="button"
          role="tab"
          id={`${DESK_PANEL}-${each}`}
          data-tab={each}
          aria-selected={each === tab}
          aria-controls={DESK_PANEL}
          tabIndex={each === tab ? 0 : -1}
          onClick={() => onTab(each)}
          onKeyDown={press}
        >
          {TAB_NAMES[each]}
        </button>
      ))}
    </div>
  );
}
