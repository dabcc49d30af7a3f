import { useState } from 'react';
import { Transpose } from './Transpose.tsx';

/** Opens the sheet on which the whole song is moved into another key. */
export function TransposeButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        Transpose …
      </button>
      {isOpen && <Transpose onClose={() => setOpen(false)} />}
    </>
  );
}
