import { useRef } from 'react';
import { useFrame } from '../../kit/useFrame.ts';
import { useParts } from '../tool/parts.ts';
import { usePlayback } from '../tool/useProject.ts';
import { RIBBON_PX, type RibbonLayout } from './ribbonLayout.ts';

/** The place that is heard, as a thin red line of ink along the ribbon. */
export function RibbonPlayhead({ layout }: { readonly layout: RibbonLayout }) {
  const { playback } = useParts();
  const ink = useRef<HTMLDivElement>(null);
  const isRunning = usePlayback().status === 'playing';
  useFrame(isRunning, () => {
    if (!ink.current) return;
    const position = playback.position();
    const span = position?.request.kind === 'song' ? position.section : undefined;
    const block = position && span && layout.blocks[position.timeline.sections.indexOf(span)];
    ink.current.hidden = !block;
    if (!position || !span || !block) return;
    const into = (position.tick - span.startTick) / (span.endTick - span.startTick);
    const x = block.x + Math.min(1, Math.max(0, into)) * block.width;
    ink.current.style.transform = `translate(${x}px, ${block.row * RIBBON_PX.row}px)`;
  });
  return <div className="songmap-playhead" ref={ink} hidden />;
}
