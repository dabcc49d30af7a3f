import { useEffect, useRef } from 'react';

/**
 * Calls `draw` before every repaint for as long as `running`, and once more when it stops; `draw`
 * writes to the page through refs, so live values never pass through React state.
 */
export function useFrame(running: boolean, draw: () => void): void {
  const latest = useRef(draw);
  useEffect(() => {
    latest.current = draw;
  });
  useEffect(() => {
    if (!running) {
      latest.current();
      return undefined;
    }
    let request = 0;
    const frame = () => {
      // Asked for first, so that what goes wrong once does not stop the picture for good.
      request = requestAnimationFrame(frame);
      latest.current();
    };
    request = requestAnimationFrame(frame);
    return () => cancelAnimationFrame(request);
  }, [running]);
}
