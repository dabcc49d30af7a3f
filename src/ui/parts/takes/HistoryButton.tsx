import { useState } from 'react';
import { HistorySheet } from './HistorySheet.tsx';

/** Opens what was played of this song. */
export function HistoryButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" aria-label="What I played …" onClick={() => setOpen(true)}>
        I played …
      </button>
      {isOpen && <HistorySheet onClose={() => setOpen(false)} />}
    </>
  );
}
