import { useState } from 'react';
import { PlanSheet } from './PlanSheet.tsx';

/** Opens the plan for the time there is. */
export function PlanButton() {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        Plan …
      </button>
      {isOpen && <PlanSheet onClose={() => setOpen(false)} />}
    </>
  );
}
