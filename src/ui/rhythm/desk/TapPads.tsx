import { useEffect, useRef } from 'react';
import type { Tapping } from './useTapping.ts';

const PADS = [
  { key: 'F', name: 'Left pad, key F' },
  { key: 'J', name: 'Right pad, key J' },
] as const;

/** Two big pads for two fingers or two hands; each finger on them is a tap. */
export function TapPads({ tapping }: { readonly tapping: Tapping }) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  return (
    <div className="desk-pads">
      {PADS.map(({ key, name }, i) => (
        <button
          key={key}
          type="button"
          className="desk-pad"
          aria-label={name}
          ref={i === 0 ? first : undefined}
          onPointerDown={(event) => {
            event.preventDefault();
            event.currentTarget.setPointerCapture(event.pointerId);
            tapping.down(`pointer ${event.pointerId}`, event.timeStamp);
          }}
          onPointerUp={(event) => tapping.up(`pointer ${event.pointerId}`, event.timeStamp)}
          onPointerCancel={(event) => tapping.up(`pointer ${event.pointerId}`, event.timeStamp)}
          // A screen reader presses without a pointer.
          onClick={(event) => {
            if (event.detail === 0) tapping.down(key, event.timeStamp);
          }}
        >
          {key}
        </button>
      ))}
    </div>
  );
}
