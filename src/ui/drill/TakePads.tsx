import { useEffect, useRef } from 'react';
import { useParts } from '../parts/tool/parts.ts';

/** Two big pads, one for each hand; what is listening hears the touches themselves. */
export function TakePads() {
  const { pads } = useParts();
  const left = useRef<HTMLButtonElement>(null);
  const right = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (left.current && right.current) pads.set({ left: left.current, right: right.current });
    return () => pads.set(undefined);
  }, [pads]);
  return (
    <div className="takes-pads" role="group" aria-label="Pads">
      <button type="button" ref={left} className="takes-pad takes-pad-left">
        Left hand
      </button>
      <button type="button" ref={right} className="takes-pad takes-pad-right">
        Right hand
      </button>
    </div>
  );
}
