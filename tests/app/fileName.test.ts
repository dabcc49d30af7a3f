import { array, assert, property, string } from 'fast-check';
import { expect, it } from 'vitest';
import { fileNameOf } from '../../src/app/fileName.ts';

it.each([
  [['Lamps Along the Quay'], 'Lamps Along the Quay.wav'],
  [['Über die Brücke', 'drill on B♭', '72 bpm'], 'Über die Brücke - drill on B♭ - 72 bpm.wav'],
  [['Now/Then: why?', 'drill on D/F♯'], 'Now-Then- why- - drill on D-F♯.wav'],
  [['  ..hidden.. '], 'hidden.wav'],
  [['two\nlines\tand a tab'], 'two lines and a tab.wav'],
  [['left\u202eright\u0000'], 'leftright.wav'],
  [['', '90 bpm'], '90 bpm.wav'],
  [['???'], 'Song.wav'],
  [[''], 'Song.wav'],
  // Device names of Windows, from memory.
  [['con'], 'Song con.wav'],
  [['COM1.take'], 'Song COM1.take.wav'],
  [['Console'], 'Console.wav'],
])('%j becomes %s', (parts, name) => expect(fileNameOf(parts, 'wav')).toBe(name));

it('cuts a long name between two signs', () => {
  expect(fileNameOf(['歌'.repeat(100)], 'mid')).toBe(`${'歌'.repeat(66)}.mid`);
  expect(fileNameOf(['😀'.repeat(60)], 'mid')).toBe(`${'😀'.repeat(50)}.mid`);
});

it('is a name that every system takes, whatever the title', () => {
  assert(
    property(array(string({ unit: 'binary', maxLength: 150 }), { maxLength: 3 }), (parts) => {
      const name = fileNameOf(parts, 'json');
      expect(name).toMatch(/^[^\\/:*?"<>|\p{Cc}]+\.json$/u);
      expect(name).not.toMatch(/^[\s.]|[\s.]\.json$/);
      expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
    }),
  );
});
