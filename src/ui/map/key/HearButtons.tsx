import { useState } from 'react';
import type { PhraseRequest } from '../../../app/score.ts';
import { choiceOf, type PatternCourse, patternIdAt } from '../../../core/song/patternCourse.ts';
import type { Section } from '../../../core/song/song.ts';
import { voiceSection } from '../../../core/voicing/voiceTimeline.ts';
import type { Voicing } from '../../../core/voicing/voicing.ts';
import { useParts } from '../../parts/tool/parts.ts';
import { barRequest, chordRequest, sectionRequest } from './hearing.ts';

/** Plays at once, in the section's own hands, what the chart has at the chosen place: chord, bar, section. */
export function HearButtons({
  section,
  slot,
  bar,
  course,
}: {
  readonly section: Section;
  /** The slot that sounds at the chosen place, and its bar (0-based). */
  readonly slot: number;
  readonly bar: number;
  /** What is played from which bar on. */
  readonly course: PatternCourse;
}) {
  const { store, playback } = useParts();
  const [isPlain, setPlain] = useState(true);
  const heard = isPlain ? [] : course;
  const hear = (requestIn: (hands: readonly Voicing[]) => PhraseRequest | undefined) => {
    const hands = voiceSection(section.slots, store.snapshot().voicing, 'loop');
    // Without hands the playback names the chord that can't be played.
    const request = requestIn(hands.ok ? hands.value : []);
    if (request) void playback.play(request);
  };
  return (
    <div className="keypanel-hear" role="group" aria-label="Hear at once">
      <small>Hear</small>
      <button type="button" onClick={() => hear((hands) => chordRequest(section, slot, hands))}>
        Chord
      </button>
      <button
        type="button"
        onClick={() => hear((hands) => barRequest(section, bar, hands, patternIdAt(heard, bar)))}
      >
        Bar {bar + 1}
      </button>
      <button
        type="button"
        onClick={() => hear((hands) => sectionRequest(section, hands, choiceOf(heard)))}
      >
        Section
      </button>
      {course.some(({ patternId }) => patternId !== undefined) && (
        <button type="button" aria-pressed={!isPlain} onClick={() => setPlain(!isPlain)}>
          with the pattern
        </button>
      )}
    </div>
  );
}
