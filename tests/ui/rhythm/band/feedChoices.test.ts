import { expect, it } from 'vitest';
import { HAND_RULES, type HandFeed } from '../../../../src/core/rhythm/handRules.ts';
import {
  feedInto,
  PLAY_CHOICES,
  playChoiceOf,
  withFeed,
} from '../../../../src/ui/rhythm/band/feedChoices.ts';

const snare = HAND_RULES.feeds.find(({ part }) => part === 'snare')!;

it('finds every feed of the usual rules among what is offered', () => {
  for (const feed of HAND_RULES.feeds.filter(({ hand }) => hand !== 'neither')) {
    const { play } = PLAY_CHOICES[feed.hand as 'left' | 'right'][playChoiceOf(feed)]!;
    expect(play).toEqual(feed.play);
  }
});

it('gives a source that changes hands something that hand can play', () => {
  expect(feedInto(snare, 'left')).toMatchObject({ hand: 'left', play: ['root'] });
  expect(feedInto(feedInto(snare, 'left'), 'right').play).toEqual(['all']);
  const own: HandFeed = { ...snare, play: 'own' };
  expect(feedInto(own, 'left').play).toBe('own');
});

it('forgets nothing of a source that feeds neither hand for a while', () => {
  expect(feedInto(feedInto(snare, 'neither'), 'right')).toEqual(snare);
});

it('changes the one feed and leaves the rest', () => {
  const rules = withFeed(HAND_RULES, 'snare', feedInto(snare, 'neither'));
  const changed = rules.feeds.filter((feed, i) => feed !== HAND_RULES.feeds[i]);
  expect(changed).toMatchObject([{ part: 'snare', hand: 'neither' }]);
  expect(withFeed({ feeds: [], fallbacks: [] }, 'snare', snare).feeds).toEqual([]);
});
