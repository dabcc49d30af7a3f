import { formatChordSymbol } from '../../core/harmony/chordSymbol.ts';
import type { SoundingHands } from '../../core/practice/soundingHands.ts';
import type { Passage, Stage } from '../../core/practice/stage.ts';
import { unreachable } from '../../core/result.ts';
import type { Level } from '../../core/rhythm/levels.ts';
import { type Named, nameIn } from '../parts/plan/planWords.ts';

/** What a stage goes through, in words. */
export function passageWords(passage: Passage, { song }: Pick<Named, 'song'>): string {
  switch (passage.kind) {
    case 'one-chord':
      return 'One chord';
    case 'two-chords':
      return `${formatChordSymbol(passage.first)} to ${formatChordSymbol(passage.second)}`;
    case 'section':
      return nameIn(song.sections, passage.sectionId) || 'A section that is gone';
    case 'join': {
      const [from, to] = [passage.from, passage.to].map((id) => nameIn(song.sections, id));
      return from && to ? `${from} to ${to}` : 'A join that is gone';
    }
    default:
      return unreachable(passage);
  }
}

/** Which hands are mine at a stage, by what the tool sounds. */
export const MY_HANDS: Readonly<Record<SoundingHands, string>> = {
  right: 'left hand',
  left: 'right hand',
  none: 'both hands',
  both: 'both, the tool with me',
};

/** A level in words; none where all of the part is played. */
export function levelWords(level: Level | undefined): string {
  return level === undefined ? '' : `level ${level}`;
}

/**
 * A stage in a few words. On the one chord the hands tell stages apart: “Left hand alone”, “Both hands,
 * level 2”; elsewhere what is gone through: “Verse”, “C to Am, left hand”.
 */
export function stageWords(stage: Stage, named: Pick<Named, 'song'>): string {
  const { passage, tool, level } = stage;
  const isAlone = tool === 'left' || tool === 'right';
  const hands = tool === undefined ? '' : MY_HANDS[tool === 'both' ? 'none' : tool];
  const words =
    passage.kind === 'one-chord'
      ? [hands ? `${capital(hands)}${isAlone ? ' alone' : ''}` : 'One chord']
      : [passageWords(passage, named), ...(isAlone ? [hands] : [])];
  return [...words, ...(level === undefined ? [] : [levelWords(level)])].join(', ');
}

function capital(text: string): string {
  return `${text[0]!.toUpperCase()}${text.slice(1)}`;
}
