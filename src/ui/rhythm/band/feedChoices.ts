import type { HandFeed, HandRules, StrokePlay, StrokeUse } from '../../../core/rhythm/handRules.ts';
import type { SourcePart } from '../../../core/rhythm/sources.ts';

/** A way to play a source's strokes, as it is offered for a hand. */
export type PlayChoice = { readonly name: string; readonly play: StrokePlay };

const AS_PLAYED: PlayChoice = { name: 'as played', play: 'own' };

/** What each hand can make of a source. */
export const PLAY_CHOICES: Readonly<Record<'left' | 'right', readonly PlayChoice[]>> = {
  left: [
    AS_PLAYED,
    { name: 'root', play: ['root'] },
    { name: 'fifth', play: ['fifth'] },
    { name: 'octave', play: ['octave'] },
    { name: 'root and octave', play: ['root', 'octave'] },
    { name: 'root and fifth', play: ['root', 'fifth'] },
  ],
  right: [
    AS_PLAYED,
    { name: 'chord', play: ['all'] },
    { name: 'upper part', play: ['upper'] },
    { name: 'top', play: ['top'] },
    { name: 'bottom', play: ['bottom'] },
  ],
};

/** Which of a source's strokes become hits, in words. */
export const USE_NAMES: Readonly<Record<StrokeUse, string>> = {
  'every-stroke': 'every stroke',
  'strong-strokes': 'strong ones',
  accents: 'as accents',
};

/** How the hands are called in the rules. */
export const HAND_NAMES: Readonly<Record<HandFeed['hand'], string>> = {
  left: 'left hand',
  right: 'right hand',
  neither: 'neither',
};

function samePlay(a: StrokePlay, b: StrokePlay): boolean {
  return String(a) === String(b);
}

/** The choice that a feed has made, by its place among those of its hand; the first where it is none of them. */
export function playChoiceOf({ hand, play }: HandFeed): number {
  if (hand === 'neither') return 0;
  const place = PLAY_CHOICES[hand].findIndex((choice) => samePlay(choice.play, play));
  return Math.max(place, 0);
}

/** A feed that goes into a hand; where it played what that hand has not, it plays the hand's plainest tone. */
export function feedInto(feed: HandFeed, hand: HandFeed['hand']): HandFeed {
  if (hand === 'neither') return { ...feed, hand };
  const isKnown = PLAY_CHOICES[hand].some((choice) => samePlay(choice.play, feed.play));
  const plainest = PLAY_CHOICES[hand][1]!.play;
  return { ...feed, hand, play: isKnown ? feed.play : plainest };
}

/** The rules with another feed for one part; the very same rules where the part has none. */
export function withFeed(rules: HandRules, part: SourcePart, feed: HandFeed): HandRules {
  if (!rules.feeds.some((each) => each.part === part)) return rules;
  return { ...rules, feeds: rules.feeds.map((each) => (each.part === part ? feed : each)) };
}
