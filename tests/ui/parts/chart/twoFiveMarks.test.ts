import { expect, it } from 'vitest';
import { twoFiveMarks } from '../../../../src/ui/parts/chart/twoFiveMarks.ts';
import { slots } from '../../../support/music.ts';

function marks(chart: string): string {
  return twoFiveMarks(slots(chart))
    .map((mark) => mark ?? '.')
    .join(' ');
}

it('brackets a second with its dominant, one chain after the other', () => {
  expect(marks('| Dm7 | G7 | C |')).toBe('begins ends .');
  expect(marks('| Em7 A7 Dm7 G7 | C |')).toBe('begins ends begins ends .');
});

it('begins with the last of several seconds and runs through a silence', () => {
  expect(marks('| Dm7 Dm7/C G7 C |')).toBe('. begins ends .');
  expect(marks('| Dm7 N.C. G7 C |')).toBe('begins goes-on ends .');
});

it('brackets nothing where there is no ii–V', () =>
  expect(marks('| C | F | G | C |')).toBe('. . . .'));
