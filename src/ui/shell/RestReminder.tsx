import { useEffect, useRef, useState } from 'react';
import { isRestDue, NOT_PLAYED, playedAfter } from '../../core/practice/rest.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useView } from '../parts/tool/useProject.ts';

const LOOK_SEC = 5;

/** A line that suggests a rest once so much was played; it goes with a tap and can be turned off for good. */
export function RestReminder() {
  const { view } = useParts();
  const minutes = useView((state) => state.restMinutes);
  const isPlaying = usePlayback().status === 'playing';
  const time = useRef(NOT_PLAYED);
  const [isDue, setDue] = useState(false);
  useEffect(() => {
    const look = setInterval(() => {
      time.current = playedAfter(time.current, isPlaying, LOOK_SEC);
      setDue(minutes > 0 && isRestDue(time.current, minutes));
    }, LOOK_SEC * 1000);
    return () => clearInterval(look);
  }, [isPlaying, minutes]);
  const later = () => {
    time.current = NOT_PLAYED;
    setDue(false);
  };
  return (
    <div role="status">
      {isDue && (
        <p className="message message-kind">
          You have played for {minutes} minutes. Rest your hands and ears for five; if anything
          hurts, stop, and ask a teacher or a doctor.
          <span className="row">
            <button type="button" onClick={later}>
              Later
            </button>
            <button type="button" onClick={() => view.set({ restMinutes: 0 })}>
              Do not remind me
            </button>
          </span>
        </p>
      )}
    </div>
  );
}
