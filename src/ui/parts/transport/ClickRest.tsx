import { useRef } from 'react';
import { useFrame } from '../../kit/useFrame.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback } from '../tool/useProject.ts';
import { clickRestWords } from './clickWords.ts';

/** Says that the click is silent on purpose, and for how many bars still. */
export function ClickRest() {
  const { playback } = useParts();
  const words = useRef<HTMLParagraphElement>(null);
  const running = usePlayback().status === 'playing';
  useFrame(running, () => {
    const said = clickRestWords(playback.position()?.clickRests ?? 0);
    if (words.current && words.current.textContent !== said) words.current.textContent = said;
  });
  return running && <p ref={words} className="practice-click-rest" />;
}
