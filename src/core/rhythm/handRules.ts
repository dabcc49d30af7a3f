import type { HandName } from '../voicing/voicing.ts';
import type { SourcePart, StrokeTone } from './sources.ts';
import type { BassTone, VoiceTone } from './tones.ts';

/** What a hand plays for a stroke: the stroke's own tone, or always these. */
export type StrokePlay = 'own' | readonly BassTone[] | readonly VoiceTone[];

/**
 * How long: as the stroke sounds, on until the hand's next hit, or short. A drum's length says nothing,
 * so drums are held or short.
 */
export type StrokeLength = 'own' | 'held' | 'short';

/**
 * What a source gives its hand: a hit for every stroke, only for its strong ones, or none, but accents
 * on the hits it meets.
 */
export type StrokeUse = 'every-stroke' | 'strong-strokes' | 'accents';

/** What a source is used for that would only add accents in a hand that nobody gives hits. */
export const RAISED_USE: StrokeUse = 'strong-strokes';

/** What one kind of source feeds. */
export type HandFeed = {
  readonly part: SourcePart;
  readonly hand: HandName | 'neither';
  readonly play: StrokePlay;
  readonly length: StrokeLength;
  readonly use: StrokeUse;
};

/** Places in the bar: every stroke wherever it is, half beats, felt beats, the unstressed beats, stress groups, downbeats. */
export type HandPlaces = 'all' | 'half-beats' | 'beats' | 'weak-beats' | 'groups' | 'downbeats';

/**
 * What helps a hand that the feeds leave without any hit (`empty`) or with very few, see `SPARSE_HITS`
 * (`sparse`): strokes of a source, or the meter itself, at certain places; `only` picks strokes
 * by what they sound. `touch` of the hits: as the strokes are, or all light.
 */
export type HandFallback = {
  readonly hand: HandName;
  readonly when: 'empty' | 'sparse';
  readonly from: SourcePart | 'meter';
  readonly at: HandPlaces;
  readonly only?: StrokeTone;
  readonly play: StrokePlay;
  readonly length: StrokeLength;
  readonly touch: 'own' | 'light';
};

/** Who feeds which hand. Where two feeds meet on one tick, the earlier one's tones are played. */
export type HandRules = {
  readonly feeds: readonly HandFeed[];
  readonly fallbacks: readonly HandFallback[];
};

/**
 * Fewer hits than this for each felt beat are very few, less than the two back-beats of a 4/4 bar; and
 * just as many, if none of them is on a beat.
 */
export const SPARSE_HITS = 0.5;

/**
 * The rules that hold until the user changes them (common practice of accompanying). The bass line is
 * the left hand and the kick adds accents to it; a kick alone is the root. Strums and the snare are
 * the right hand's chord, the snare short, and beside a guitar only its back-beats; picking is single
 * voices by height. Hats, cymbals, toms and percussion stay with the drummer, the sung line with the
 * singer, unless a hand would have nothing to do.
 */
export const HAND_RULES: HandRules = {
  feeds: [
    { part: 'bass', hand: 'left', play: 'own', length: 'own', use: 'every-stroke' },
    { part: 'kick', hand: 'left', play: ['root'], length: 'held', use: 'accents' },
    { part: 'strumming', hand: 'right', play: ['all'], length: 'own', use: 'every-stroke' },
    { part: 'snare', hand: 'right', play: ['all'], length: 'short', use: 'strong-strokes' },
    { part: 'picking', hand: 'right', play: 'own', length: 'own', use: 'every-stroke' },
    { part: 'sung', hand: 'neither', play: 'own', length: 'own', use: 'every-stroke' },
    { part: 'hi-hat', hand: 'neither', play: ['upper'], length: 'short', use: 'every-stroke' },
    { part: 'cymbal', hand: 'neither', play: ['upper'], length: 'short', use: 'every-stroke' },
    { part: 'tom', hand: 'neither', play: ['root'], length: 'held', use: 'every-stroke' },
    { part: 'percussion', hand: 'neither', play: ['upper'], length: 'short', use: 'every-stroke' },
  ],
  fallbacks: [
    {
      hand: 'left',
      when: 'empty',
      from: 'picking',
      at: 'all',
      only: 'voice-1',
      play: ['root'],
      length: 'held',
      touch: 'own',
    },
    {
      hand: 'left',
      when: 'empty',
      from: 'tom',
      at: 'all',
      play: ['root'],
      length: 'held',
      touch: 'own',
    },
    {
      hand: 'left',
      when: 'empty',
      from: 'strumming',
      at: 'groups',
      play: ['root'],
      length: 'held',
      touch: 'own',
    },
    {
      hand: 'left',
      when: 'empty',
      from: 'meter',
      at: 'downbeats',
      play: ['root'],
      length: 'held',
      touch: 'own',
    },
    {
      hand: 'right',
      when: 'empty',
      from: 'sung',
      at: 'all',
      play: 'own',
      length: 'own',
      touch: 'own',
    },
    {
      hand: 'right',
      when: 'sparse',
      from: 'hi-hat',
      at: 'half-beats',
      play: ['upper'],
      length: 'short',
      touch: 'light',
    },
    {
      hand: 'right',
      when: 'sparse',
      from: 'cymbal',
      at: 'half-beats',
      play: ['upper'],
      length: 'short',
      touch: 'light',
    },
    {
      hand: 'right',
      when: 'sparse',
      from: 'percussion',
      at: 'half-beats',
      play: ['upper'],
      length: 'short',
      touch: 'light',
    },
    {
      hand: 'right',
      when: 'empty',
      from: 'meter',
      at: 'weak-beats',
      play: ['all'],
      length: 'short',
      touch: 'own',
    },
  ],
};

/** `HAND_RULES` for a band: where nobody plays a bass line, the kick plays the left hand instead of adding accents to it. */
export function rulesForBand(hasBassLine: boolean): HandRules {
  if (hasBassLine) return HAND_RULES;
  const feeds = HAND_RULES.feeds.map((feed) =>
    feed.part === 'kick' ? { ...feed, use: 'every-stroke' as const } : feed,
  );
  return { ...HAND_RULES, feeds };
}
