import { describe, expect, it } from 'vitest';
import { type KeptTexts, lastWordsIn } from '../../src/state/lastWords.ts';

const ROW = { id: 'one', title: 'One', savedAtMs: 5, text: '{}' };

function keptTexts(): KeptTexts {
  const texts = new Map<string, string>();
  return {
    getItem: (name) => texts.get(name) ?? null,
    setItem: (name, text) => texts.set(name, text),
    removeItem: (name) => texts.delete(name),
  };
}

const REFUSING: KeptTexts = {
  getItem: () => {
    throw new Error('SecurityError');
  },
  setItem: () => {
    throw new Error('QuotaExceededError');
  },
  removeItem: () => {
    throw new Error('SecurityError');
  },
};

describe('last words', () => {
  it('are read as they were written, under their name only', () => {
    const texts = keptTexts();
    lastWordsIn(texts, 'songs').write(ROW);
    expect(lastWordsIn(texts, 'songs').read()).toEqual(ROW);
    expect(lastWordsIn(texts, 'others').read()).toBeUndefined();
  });

  it('are cleared up to a moment, so that a write which ends late takes nothing newer with it', () => {
    const words = lastWordsIn(keptTexts(), 'songs');
    words.write(ROW);
    words.clearUpTo(4);
    expect(words.read()).toEqual(ROW);
    words.clearUpTo(5);
    expect(words.read()).toBeUndefined();
  });

  it.each(['', 'scrap', 'null', '{"id":"one"}', '{"id":1,"title":"","savedAtMs":0,"text":""}'])(
    'are none where something else stands in their place: %j',
    (text) => {
      const texts = keptTexts();
      texts.setItem('songs last words', text);
      expect(lastWordsIn(texts, 'songs').read()).toBeUndefined();
    },
  );

  it.each([
    ['keeps no texts', undefined],
    ['refuses them', REFUSING],
  ])('are none where the browser %s', (_, texts) => {
    const words = lastWordsIn(texts, 'songs');
    words.write(ROW);
    words.clearUpTo(9);
    expect(words.read()).toBeUndefined();
  });
});
