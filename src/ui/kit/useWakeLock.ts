import { useEffect } from 'react';

/**
 * Keeps the screen awake for as long as `wanted`, where the browser can; also again after the page
 * was hidden, as browsers let go of the screen then.
 */
export function useWakeLock(wanted: boolean): void {
  useEffect(() => {
    if (!wanted || !('wakeLock' in navigator)) return undefined;
    let lock: WakeLockSentinel | undefined;
    let isOver = false;
    const keep = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const next = await navigator.wakeLock.request('screen');
        if (isOver) await next.release();
        else lock = next;
      } catch {
        // Refused (a low battery, say): the screen then sleeps as it usually does.
      }
    };
    void keep();
    const whenVisible = () => void keep();
    document.addEventListener('visibilitychange', whenVisible);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', whenVisible);
      void lock?.release();
    };
  }, [wanted]);
}
