import { expect, it } from 'vitest';
import { heardWith, withLatency } from '../../../../src/ui/parts/takes/latencies.ts';
import { createViewStore, FIRST_VIEW } from '../../../../src/ui/parts/tool/viewState.ts';

function viewKeptAs(hearing: unknown) {
  const kept = { getItem: () => JSON.stringify({ hearing }), setItem: () => undefined };
  return createViewStore(kept).snapshot();
}

it('keeps the latency of each input by itself, in whole milliseconds', () => {
  const keys = withLatency(FIRST_VIEW, 'keys', 41.6);
  const { hearing } = withLatency(keys, 'microphone', 120);
  expect(hearing.latencyMs).toEqual({ keys: 42, microphone: 120 });
});

it('keeps a latency within what can be measured', () => {
  expect(withLatency(FIRST_VIEW, 'keys', 900).hearing.latencyMs.keys).toBe(500);
  expect(withLatency(FIRST_VIEW, 'keys', -900).hearing.latencyMs.keys).toBe(-150);
});

it('hears with the chosen input, on time where its latency is not known', () => {
  expect(heardWith(FIRST_VIEW)).toBeUndefined();
  const hearing = { input: 'midi', latencyMs: { keys: 40 } } as const;
  expect(heardWith({ hearing })).toEqual({ kind: 'midi', latencySec: 0 });
  expect(heardWith({ hearing: { ...hearing, input: 'keys' } })).toEqual({
    kind: 'keys',
    latencySec: 0.04,
  });
});

it('finds the choice and the latencies again on this device', () => {
  const hearing = { input: 'pads', latencyMs: { pads: 35, keys: -5 } };
  expect(viewKeptAs(hearing).hearing).toEqual(hearing);
});

it.each([
  [{ input: 'drum', latencyMs: { keys: 'late', pads: 9000, midi: 1.5 } }],
  [{ input: 'nothing', latencyMs: null }],
  ['keys'],
])('hears nothing where %j was kept', (hearing) => {
  expect(viewKeptAs(hearing).hearing).toEqual(FIRST_VIEW.hearing);
});
