import { type ReactNode, useRef, useState } from 'react';
import { Popup } from './Popup.tsx';

type Props = {
  /** What stands on the button, and names the popup. */
  readonly label: ReactNode;
  readonly name?: string;
  readonly className?: string;
  /** The popup's inside; it is given what closes it. */
  readonly children: (close: () => void) => ReactNode;
};

/** A button with a small sheet that opens from it. */
export function PopupButton({ label, name, className, children }: Props) {
  const button = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  const close = () => setOpen(false);
  return (
    <>
      <button
        ref={button}
        type="button"
        className={className}
        aria-haspopup="dialog"
        aria-expanded={isOpen}
        aria-label={name}
        onClick={() => setOpen(!isOpen)}
      >
        {label}
      </button>
      {isOpen && (
        <Popup label={name ?? String(label)} anchor={button} onClose={close}>
          {children(close)}
        </Popup>
      )}
    </>
  );
}
