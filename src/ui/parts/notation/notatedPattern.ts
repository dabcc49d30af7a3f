import type { Chord } from '../../../core/harmony/chord.ts';
import type { Key } from '../../../core/harmony/key.ts';
import { drillTimeline } from '../../../core/practice/drill.ts';
import { ok, type Result } from '../../../core/result.ts';
import { notate } from '../../../core/rhythm/notate.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { withoutSwing } from '../../../core/rhythm/patternMoves.ts';
import { realise } from '../../../core/rhythm/realise.ts';
import { voiceTimeline } from '../../../core/voicing/voiceTimeline.ts';
import type { VoicingSettings } from '../../../core/voicing/voicing.ts';
import type { NothingPlayable } from '../../../state/selectors.ts';
import { swingWords } from '../pattern/swingWords.ts';
import type { BarWords, Notation } from './notation.ts';

/** On what a pattern is shown: the chord that is held, how hands lie, the key whose signature it stands under. */
export type HeldChord = {
  readonly chord: Chord;
  readonly voicing: VoicingSettings;
  readonly key: Key;
};

/**
 * A pattern on a held chord as notation: its bars between repeat signs, and after them its ending
 * where it has one. Swing is a word over the first bar. Where no hands can play the chord, the error
 * says so.
 */
export function notatedPattern(
  pattern: Pattern,
  { chord, voicing, key }: HeldChord,
): Result<Notation, NothingPlayable> {
  const bars = pattern.bars + (pattern.ending ? 1 : 0);
  const timeline = drillTimeline(chord, pattern.meter, bars);
  const voicings = voiceTimeline(timeline, voicing);
  if (!voicings.ok) return voicings;
  const straight = withoutSwing(pattern);
  const loop = pattern.ending === undefined;
  const notes = realise(timeline, voicings.value, () => straight, { loop });
  if (!notes.ok) throw new Error(`“${pattern.name}” has bars of another meter`);
  return ok({
    title: pattern.name,
    sheet: notate(notes.value, timeline),
    key,
    kind: 'in-time',
    words: [...swingOver(pattern), ...endingWords(pattern)],
    repeated: { firstBar: 0, lastBar: pattern.bars - 1 },
  });
}

function swingOver({ swing }: Pattern): BarWords[] {
  const words = swingWords(swing.ratio);
  return words === 'straight' ? [] : [{ bar: 0, text: `${swing.level}s swing: ${words}` }];
}

function endingWords({ ending, bars }: Pattern): BarWords[] {
  return ending ? [{ bar: bars, text: 'ending' }] : [];
}
