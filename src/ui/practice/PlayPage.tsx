import './practice.css';
import '../washes.css';
import { useRef } from 'react';
import type { PlaybackPosition } from '../../app/playback.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { beatStarts } from '../../core/time/meter.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { ChordName } from '../ChordName.tsx';
import { useParts } from '../parts.ts';
import { playingName } from '../songMap/marking.ts';
import { useFrame } from '../useFrame.ts';
import { usePlayback, useProject } from '../useProject.ts';
import { Beats } from './Beats.tsx';
import { barsLeftText, glanceBars, nextChordIndex } from './follow.ts';
import { PlayRange } from './PlayRange.tsx';

/** Where the page stands before anything plays: at the first bar of what will be played. */
function atRest(timeline: Timeline, firstBar: number): Pick<PlaybackPosition, 'tick' | 'bar'> {
  return { tick: timeline.bars[firstBar]?.startTick ?? 0, bar: firstBar };
}

function markOnly(list: HTMLElement | null, name: string, index: number | undefined): void {
  for (const item of list?.querySelectorAll(`.${name}`) ?? []) item.classList.remove(name);
  if (index !== undefined) list?.children[index]?.classList.add(name);
}

function markBar(glance: HTMLElement | null, bar: number | undefined): void {
  for (const item of glance?.querySelectorAll('[aria-current]') ?? [])
    item.removeAttribute('aria-current');
  glance?.querySelector(`[data-bar="${bar}"]`)?.setAttribute('aria-current', 'true');
}

/** The bars of one playing of a section, small, so that the eye can run ahead. */
function Glance({ timeline, section }: { readonly timeline: Timeline; readonly section: number }) {
  return (
    <ol className="practice-glance">
      {glanceBars(timeline, section).map(({ bar, chords }) => (
        <li key={bar} data-bar={bar}>
          {chords.length === 0
            ? '–'
            : chords.map((span) => <ChordName key={span.startTick} chord={span.chord} />)}
        </li>
      ))}
    </ol>
  );
}

/** The whole song to follow from the stand: this chord, the next, the beat, the section and what is left of it. */
export function PlayPage() {
  const { playback, view } = useParts();
  const timeline = useProject(selectTimeline);
  const sections = useProject((project) => project.song.sections);
  const running = usePlayback().status === 'playing';
  const chords = useRef<HTMLOListElement>(null);
  const ribbon = useRef<HTMLOListElement>(null);
  const section = useRef<HTMLParagraphElement>(null);
  const left = useRef<HTMLParagraphElement>(null);
  const glance = useRef<HTMLDivElement>(null);
  const playhead = useRef<HTMLDivElement>(null);

  useFrame(running, () => {
    const heard = playback.position();
    const follows = heard?.request.kind === 'song' ? heard : undefined;
    const place = follows ?? atRest(timeline, view.snapshot().range?.firstBar ?? 0);
    const now = timeline.chords.findLastIndex((span) => span.startTick <= Math.max(place.tick, 0));
    markOnly(chords.current, 'practice-now', now);
    markOnly(chords.current, 'practice-next', nextChordIndex(timeline, now));
    const playing = timeline.sections.findLastIndex(
      (each) => each.startTick <= Math.max(place.tick, 0),
    );
    markOnly(ribbon.current, 'practice-section-now', playing);
    markOnly(glance.current, 'practice-glance-now', playing);
    markBar(glance.current, place.bar);
    const span = timeline.sections[playing];
    if (section.current && span) section.current.textContent = playingName(timeline, playing);
    if (left.current)
      left.current.textContent = barsLeftText(timeline, place, follows?.countingIn ?? false);
    const share = timeline.lengthTicks > 0 ? Math.max(place.tick, 0) / timeline.lengthTicks : 0;
    if (playhead.current) playhead.current.style.left = `${Math.min(share, 1) * 100}%`;
  });

  if (timeline.bars.length === 0)
    return <p>The song has no bars yet: write its sections and their order on Map.</p>;
  const mostBeats = Math.max(...timeline.bars.map((bar) => beatStarts(bar.meter).length));
  return (
    <div className="practice-play">
      <h2 className="visually-hidden">Play</h2>
      <div className="practice-ribbon">
        <ol ref={ribbon}>
          {timeline.sections.map((span, i) => (
            <li
              key={span.startTick}
              className={`wash-${sections.find(({ id }) => id === span.sectionId)?.wash ?? 'straw'}`}
              style={{ flexGrow: span.bars }}
              title={playingName(timeline, i)}
            >
              <span>{playingName(timeline, i)}</span>
            </li>
          ))}
        </ol>
        <div className="practice-ribbon-line" ref={playhead} />
      </div>
      <div className="practice-where">
        <p ref={section} className="practice-section" />
        <p ref={left} className="practice-left" />
      </div>
      <ol className="practice-chords" ref={chords} aria-label="Chords in order">
        {timeline.chords.map((span) => (
          <li key={span.startTick}>
            <ChordName chord={span.chord} />
          </li>
        ))}
      </ol>
      <Beats count={mostBeats} />
      <div ref={glance} aria-hidden="true">
        {timeline.sections.map((span, i) => (
          <Glance key={span.startTick} timeline={timeline} section={i} />
        ))}
      </div>
      <PlayRange />
    </div>
  );
}
