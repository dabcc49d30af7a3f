import { expect, it } from 'vitest';
import { isRestDue, NOT_PLAYED, playedAfter, REST_SEC } from '../../../src/core/practice/rest.ts';

it('asks for a rest once so much was played, short pauses not counted', () => {
  const most = playedAfter(playedAfter(NOT_PLAYED, true, 1400), false, 60);
  expect(isRestDue(most, 25)).toBe(false);
  expect(isRestDue(playedAfter(most, true, 100), 25)).toBe(true);
});

it('begins anew after a rest of five minutes', () => {
  const played = playedAfter(NOT_PLAYED, true, 1600);
  expect(isRestDue(playedAfter(played, false, REST_SEC - 1), 25)).toBe(true);
  expect(playedAfter(played, false, REST_SEC)).toEqual(NOT_PLAYED);
});

it('adds up a quiet that comes in pieces', () => {
  let time = playedAfter(NOT_PLAYED, true, 1600);
  for (let i = 0; i < 5; i++) time = playedAfter(time, false, 60);
  expect(time).toEqual(NOT_PLAYED);
});
