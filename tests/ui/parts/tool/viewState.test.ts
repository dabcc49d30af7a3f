import { expect, it } from 'vitest';
import {
  createViewStore,
  FIRST_VIEW,
  type KeptText,
} from '../../../../src/ui/parts/tool/viewState.ts';

function keptText(first?: string): KeptText & { readonly text: () => string | undefined } {
  let text = first;
  return {
    getItem: () => text ?? null,
    setItem: (_, next) => {
      text = next;
    },
    text: () => text,
  };
}

it('starts quiet and comes back as it was left', () => {
  const kept = keptText();
  const view = createViewStore(kept);
  expect(view.snapshot().volumes.master).toBeLessThanOrEqual(0.6);
  view.set({ page: 'drill', theme: 'stage', patternId: 'p2' });
  const again = createViewStore(kept).snapshot();
  expect(again).toMatchObject({ page: 'drill', theme: 'stage', patternId: 'p2' });
});

it.each([
  ['not JSON', '{"page":'],
  ['a page that is not there', '{"page":"cellar"}'],
  ['a volume out of range', '{"volumes":{"master":7}}'],
  ['a hand that is none', '{"handLimits":{"spanSemitones":40}}'],
  ['hands that are no limits', '{"handLimits":"big"}'],
  ['another shape altogether', '[1,2,3]'],
])('falls back to the first view where it was kept as %s', (_, text) => {
  expect(createViewStore(keptText(text)).snapshot()).toEqual(FIRST_VIEW);
});

it('keeps what the player’s hands can do', () => {
  const kept = keptText();
  const handLimits = { ...FIRST_VIEW.handLimits, spanSemitones: 16 };
  createViewStore(kept).set({ handLimits });
  expect(createViewStore(kept).snapshot().handLimits).toEqual(handLimits);
});

it('works on where the device refuses to keep text', () => {
  const view = createViewStore({
    getItem: () => null,
    setItem: () => {
      throw new Error('full');
    },
  });
  view.set({ page: 'play' });
  expect(view.snapshot().page).toBe('play');
});

it('tells listeners of every change until they leave', () => {
  const view = createViewStore(keptText());
  let calls = 0;
  const leave = view.subscribe(() => calls++);
  view.set({ page: 'play' });
  leave();
  view.set({ page: 'map' });
  expect(calls).toBe(1);
});
