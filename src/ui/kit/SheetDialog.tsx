import './sheetDialog.css';
import { type ReactNode, useEffect, useRef } from 'react';

/** A sheet over the page, shown as long as it is there; Escape and its Close button put it away. */
export function SheetDialog({
  title,
  onClose,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog ref={dialog} className="sheet-dialog over-page" aria-label={title} onClose={onClose}>
      <header className="over-page-head">
        <h2>{title}</h2>
        <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </header>
      {children}
    </dialog>
  );
}
