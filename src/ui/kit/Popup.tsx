import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react';

type Props = {
  readonly label: string;
  readonly role?: 'menu' | 'dialog';
  /** What the popup hangs from; it lies under it, or over it where there is more room. */
  readonly anchor: RefObject<Element | null>;
  readonly onClose: () => void;
  readonly children: ReactNode;
};

/** White between the popup, what it hangs from, and the window's edges. */
const GAP = 8;

function placeBy(popup: HTMLElement, anchor: Element): void {
  const { left, top, bottom } = anchor.getBoundingClientRect();
  const { offsetWidth, offsetHeight } = popup;
  const roomBelow = innerHeight - bottom;
  const isBelow = roomBelow >= offsetHeight + 2 * GAP || roomBelow >= top;
  const y = isBelow ? bottom + GAP : top - GAP - offsetHeight;
  popup.style.left = `${Math.max(GAP, Math.min(left, innerWidth - offsetWidth - GAP))}px`;
  popup.style.top = `${Math.max(GAP, Math.min(y, innerHeight - offsetHeight - GAP))}px`;
}

/** The element in a popup that has the focus first: what is chosen, or else the first that can be. */
function firstStop(popup: HTMLElement): HTMLElement | null {
  return (
    popup.querySelector<HTMLElement>('[aria-checked="true"], [aria-current="true"]') ??
    popup.querySelector<HTMLElement>('button:not(:disabled), input, select')
  );
}

/**
 * A small sheet over the page that is shown as long as it is there; it keeps within the window as it
 * grows. It takes the focus, closes on
 * Escape and on a press outside (`onClose`), and gives the focus back.
 */
export function Popup({ label, role = 'dialog', anchor, onClose, children }: Props) {
  const popup = useRef<HTMLDivElement>(null);
  const close = useRef(onClose);
  useLayoutEffect(() => {
    close.current = onClose;
  });
  useLayoutEffect(() => {
    const sheet = popup.current;
    const before = document.activeElement;
    if (!sheet) return undefined;
    const closed = (event: ToggleEvent) => {
      if (event.newState === 'closed') close.current();
    };
    sheet.showPopover();
    if (anchor.current) placeBy(sheet, anchor.current);
    firstStop(sheet)?.focus();
    const resized = new ResizeObserver(() => {
      if (anchor.current) placeBy(sheet, anchor.current);
    });
    resized.observe(sheet);
    sheet.addEventListener('toggle', closed);
    return () => {
      resized.disconnect();
      sheet.removeEventListener('toggle', closed);
      if (sheet.contains(document.activeElement) && before instanceof HTMLElement) before.focus();
    };
  }, [anchor]);
  return (
    <div ref={popup} popover="auto" role={role} aria-label={label} className="pattern-popup">
      {children}
    </div>
  );
}
