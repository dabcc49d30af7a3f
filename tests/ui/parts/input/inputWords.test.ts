import { expect, it } from 'vitest';
import { INPUT_KINDS } from '../../../../src/app/takeInputs.ts';
import { hearingSentence, INPUT_WORDS } from '../../../../src/ui/parts/input/inputWords.ts';

it('says that the microphone needs headphones', () => {
  expect(INPUT_WORDS.microphone.hint).toContain('headphones');
});

it.each(INPUT_KINDS)('has a sentence for all that can be wrong with %s', (kind) => {
  for (const problem of ['unsupported', 'denied', 'no-device'] as const)
    expect(hearingSentence({ kind: problem }, kind)).toMatch(/\.$/);
  expect(hearingSentence({ kind: 'refused', text: 'in use' }, kind)).toContain('in use');
  expect(hearingSentence({ kind: 'no-sound', reason: 'no output' }, kind)).toContain('no output');
});

it('says how much is missing for a latency', () => {
  expect(hearingSentence({ kind: 'too-few-hits', hits: 7, needed: 12 }, 'keys')).toBe(
    'Only 7 beats were answered; 12 of 16 are needed. Try again.',
  );
  expect(hearingSentence({ kind: 'too-uneven', spreadMs: 61.2 }, 'keys')).toBe(
    'Too uneven to tell (± 61 ms). Try again, with one finger.',
  );
});
