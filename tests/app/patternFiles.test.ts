import { describe, expect, it } from 'vitest';
import { readPatterns, savedPatterns } from '../../src/app/patternFiles.ts';
import { decodePattern } from '../../src/formats/patternFile.ts';
import { addVariation } from '../../src/state/edits/variations.ts';
import { patternFileSentence } from '../../src/ui/rhythm/shelf/patternFileMessages.ts';
import { valueOf } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';

const GROOVE = pattern(
  '4/4',
  { left: 'R---5---', right: '..C-..C-', ending: { left: 'R-----a-' } },
  { name: 'Groove' },
);
const EASIER = pattern('4/4', { left: 'R-------', right: '..C-..C-' });
const WITH_EASIER = addVariation('p', 'v', 'level 2', EASIER)(project({ patterns: [GROOVE] }));

function problemOf(text: string): string {
  const read = readPatterns(text);
  if (read.ok) throw new Error('it was read');
  return patternFileSentence(read.error);
}

describe('a pattern as a file', () => {
  it.each(['p', 'v'])('holds the whole family, the ending too, if %s is saved', (id) => {
    const file = savedPatterns(WITH_EASIER, id)!;
    expect(file.name).toBe('Groove.json');
    expect(valueOf(readPatterns(file.text))).toEqual([
      GROOVE,
      { ...EASIER, id: 'v', name: 'Groove (level 2)', variationOf: 'p' },
    ]);
  });

  it('is one that everything that reads pattern files reads', () =>
    expect(valueOf(decodePattern(savedPatterns(WITH_EASIER, 'p')!.text))).toEqual(GROOVE));

  it('is nothing for a pattern that is not there', () =>
    expect(savedPatterns(WITH_EASIER, 'gone')).toBeUndefined());

  it('says where it is wrong, also inside a variation', () => {
    const { text } = savedPatterns(WITH_EASIER, 'p')!;
    const broken = text.replace('"name": "Groove (level 2)"', '"name": 5');
    expect(problemOf(broken)).toContain('variations[0].name');
    expect(problemOf('{')).toBe('This is no pattern file: it can’t be read.');
    expect(problemOf('[]')).toContain('but there is nothing');
    expect(problemOf(text.replace('"version": 1', '"version": 2'))).toContain('later version (2)');
  });
});
