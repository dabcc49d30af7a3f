import { type ReactNode, useRef, useState } from 'react';
import { Popup } from './Popup.tsx';

type Props = {
  /** What the button and its popup are called. */
  readonly name: string;
  /** What stands on the button instead of its name. */
  readonly label?: ReactNode;
  readonly className?: string;
  /** The popup's inside; it is given what closes it. */
  readonly children: (close: () => void) => ReactNode;
};

/** A button with a small sheet that opens from it. */
export function PopupButton({ name, label, className, children }: Props) {
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
        {label ?? name}
      </button>
      {isOpen && (
        <Popup label={name} anchor={button} onClose={close}>
          {children(close)}
        </Popup>
      )}
    </>
  );
}
