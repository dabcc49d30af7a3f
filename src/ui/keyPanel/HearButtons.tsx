import { useState } from 'react';
import type { PhraseRequest } from '../../app/score.ts';
import type { PatternId } from '../../core/ids.ts';
import type { Section } from '../../core/song/song.ts';
import { voiceSection } from '../../core/voicing/voiceTimeline.ts';
import type { Voicing } from '../../core/voicing/voicing.ts';
import { useParts } from '../parts.ts';
import { barRequest, chordRequest, sectionRequest } from './hearing.ts';

/** Plays at once, in the section's own hands, what the chart has at the chosen place: chord, bar, section. */
export function HearButtons({
  section,
  slot,
  bar,
  patternId,
}: {
  readonly section: Section;
  /** The slot that sounds at the chosen place, and its bar (0-based). */
  readonly slot: number;
  readonly bar: number;
  /** The pattern that is played there, if any. */
  readonly patternId: PatternId | undefined;
}) {
  const { store, playback } = useParts();
  const [isPlain, setPlain] = useState(true);
  const pattern = isPlain ? undefined : patternId;
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
        onClick={() => hear((hands) => barRequest(section, bar, hands, pattern))}
      >
        Bar {bar + 1}
      </button>
      <button
        type="button"
        onClick={() => hear((hands) => sectionRequest(section, hands, pattern))}
      >
        Section
      </button>
      {patternId !== undefined && (
        <button type="button" aria-pressed={!isPlain} onClick={() => setPlain(!isPlain)}>
          with the pattern
        </button>
      )}
    </div>
  );
}
