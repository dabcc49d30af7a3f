import '../parts/transport/practice.css';
import '../parts/transport/fields.css';
import './play.css';
import '../parts/song/washes.css';
import { useEffect, useRef } from 'react';
import type { PlaybackPosition } from '../../app/playbackPosition.ts';
import type { PlaybackState } from '../../app/playbackState.ts';
import { patternCourse } from '../../core/song/patternCourse.ts';
import type { Timeline } from '../../core/song/timeline.ts';
import { beatStarts } from '../../core/time/meter.ts';
import { selectTimeline } from '../../state/selectors.ts';
import { useFrame } from '../kit/useFrame.ts';
import { ChordName } from '../parts/song/ChordName.tsx';
import { playingName } from '../parts/song/marking.ts';
import { useParts } from '../parts/tool/parts.ts';
import { usePlayback, useProject, useView } from '../parts/tool/useProject.ts';
import { ClickRest } from '../parts/transport/ClickRest.tsx';
import {
  barAfter,
  barsLeftText,
  comingChordIndex,
  glanceBars,
  nextChordIndex,
} from '../parts/transport/follow.ts';
import { Beats } from './Beats.tsx';
import { goToSection } from './goToSection.ts';
import { PlayRibbon } from './PlayRibbon.tsx';
import { PlaySettings } from './PlaySettings.tsx';
import { SectionPatterns } from './SectionPatterns.tsx';
import { SectionSteps } from './SectionSteps.tsx';
import { useArranged } from './useArranged.ts';

/** Where the page stands before anything plays: at the first bar of what will be played. */
function atRest(timeline: Timeline, firstBar: number): Pick<PlaybackPosition, 'tick' | 'bar'> {
  return { tick: timeline.bars[firstBar]?.startTick ?? 0, bar: firstBar };
}

/** The chord that comes next of what plays, or at rest of the song, as an index of the timeline's chords. */
function nextChord(
  timeline: Timeline,
  playing: PlaybackState,
  now: number,
  bar: number | undefined,
): number | undefined {
  if (bar === undefined || playing.status !== 'playing' || playing.request.kind !== 'song')
    return nextChordIndex(timeline, now);
  const after = barAfter(timeline, bar, {
    ...playing,
    ...playing.request,
    time: playing.time ?? 1,
  });
  return comingChordIndex(timeline, now, bar, after);
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

/** How far the block of the section that plays is filled, from 0 to 1. */
function fillBlock(ribbon: HTMLElement | null, place: number, share: number): void {
  const block = ribbon?.children[place];
  if (block instanceof HTMLElement) block.style.setProperty('--played', `${100 * share}%`);
}

function showPattern(patterns: HTMLElement | null, bar: number): void {
  for (const figure of patterns?.children ?? []) {
    const bars = figure.getAttribute('data-bars')?.split(' ') ?? [];
    figure.classList.toggle('practice-pattern-now', bars.includes(String(bar)));
  }
}

/** The bars of a playing in which another pattern begins, or the hands begin to rest; without its first bar. */
function patternTurns({ sections }: Timeline, section: number): Set<number> {
  const span = sections[section];
  return new Set(span ? patternCourse(span).flatMap(({ bar }) => (bar > 0 ? [bar] : [])) : []);
}

/** The bars of one playing of a section, small, so that the eye can run ahead; a double line where the pattern changes. */
function Glance({ timeline, section }: { readonly timeline: Timeline; readonly section: number }) {
  const turns = patternTurns(timeline, section);
  return (
    <ol className="practice-glance">
      {glanceBars(timeline, section).map(({ bar, chords }, i) => (
        <li key={bar} data-bar={bar} data-turn={turns.has(i) || undefined}>
          {chords.length === 0
            ? '–'
            : chords.map((span) => <ChordName key={span.startTick} chord={span.chord} />)}
        </li>
      ))}
    </ol>
  );
}

/** What follows by a jump, or which time it is that something is played of several. */
function WhatComes({ timeline }: { readonly timeline: Timeline }) {
  const playing = usePlayback();
  if (playing.status !== 'playing' || playing.request.kind !== 'song') return null;
  const { wantedBar, time, request } = playing;
  const wanted = timeline.bars[wantedBar ?? -1]?.section;
  if (wanted !== undefined) return <>then {playingName(timeline, wanted)}</>;
  if (request.times === 1) return null;
  return request.times === 'until-stopped' ? (
    <>time {time}</>
  ) : (
    <>{`time ${time} of ${request.times}`}</>
  );
}

/** The whole song to follow from the stand: this chord, the next, the beat, the section and what is left of it. */
export function PlayPage() {
  const parts = useParts();
  const { playback, view } = parts;
  const timeline = useArranged(selectTimeline);
  const sections = useProject((project) => project.song.sections);
  const range = useView((state) => state.range);
  const playing = usePlayback();
  const running = playing.status === 'playing';
  const wantedBar = running ? playing.wantedBar : undefined;
  const chords = useRef<HTMLOListElement>(null);
  const ribbon = useRef<HTMLOListElement>(null);
  const section = useRef<HTMLParagraphElement>(null);
  const left = useRef<HTMLParagraphElement>(null);
  const glance = useRef<HTMLDivElement>(null);
  const patterns = useRef<HTMLDivElement>(null);

  const draw = () => {
    const heard = playback.position();
    const follows = heard?.request.kind === 'song' ? heard : undefined;
    const place = follows ?? atRest(timeline, view.snapshot().range?.firstBar ?? 0);
    // In a count-in the page stands where the music will begin.
    const begins = follows?.countingIn ? (follows.chord?.startTick ?? 0) : 0;
    const tick = Math.max(place.tick, begins);
    const now = timeline.chords.findLastIndex((span) => span.startTick <= tick);
    markOnly(chords.current, 'practice-now', now);
    markOnly(
      chords.current,
      'practice-next',
      nextChord(timeline, playback.state(), now, place.bar),
    );
    const here = timeline.sections.findLastIndex((each) => each.startTick <= tick);
    const span = timeline.sections[here];
    markOnly(ribbon.current, 'practice-section-now', here);
    markOnly(glance.current, 'practice-glance-now', here);
    markBar(glance.current, place.bar);
    showPattern(
      patterns.current,
      timeline.bars.findLastIndex(({ startTick }) => startTick <= tick),
    );
    if (!span) return;
    fillBlock(ribbon.current, here, (tick - span.startTick) / (span.endTick - span.startTick));
    if (section.current) section.current.textContent = playingName(timeline, here);
    if (left.current)
      left.current.textContent = barsLeftText(timeline, place, follows?.countingIn ?? false);
  };
  useFrame(running, draw);
  // At rest the page stands where what is marked begins.
  useEffect(() => {
    if (!running) draw();
  });

  if (timeline.bars.length === 0)
    return <p>The song has no bars yet: write its sections and their order on Map.</p>;
  const mostBeats = Math.max(...timeline.bars.map((bar) => beatStarts(bar.meter).length));
  return (
    <div className="practice-play">
      <h2 className="visually-hidden">Play</h2>
      <PlayRibbon
        ref={ribbon}
        timeline={timeline}
        washOf={(id) => sections.find((each) => each.id === id)?.wash ?? 'straw'}
        range={range}
        wanted={timeline.bars[wantedBar ?? -1]?.section}
        onChoose={(place) => goToSection(parts, place)}
      />
      <div className="practice-where">
        <p ref={section} className="practice-section" />
        <p className="practice-then" role="status">
          <WhatComes timeline={timeline} />
        </p>
        <p ref={left} className="practice-left" />
      </div>
      <ol className="practice-chords" ref={chords} aria-label="Chords in order">
        {timeline.chords.map((span) => (
          <li key={span.startTick}>
            <ChordName chord={span.chord} />
          </li>
        ))}
      </ol>
      <div className="practice-beats-line">
        <Beats count={mostBeats} />
        <ClickRest />
      </div>
      <div className="practice-below">
        <div ref={glance} aria-hidden="true">
          {timeline.sections.map((span, i) => (
            <Glance key={span.startTick} timeline={timeline} section={i} />
          ))}
        </div>
        <SectionPatterns ref={patterns} timeline={timeline} />
      </div>
      {running ? <SectionSteps /> : <PlaySettings />}
    </div>
  );
}
