import { describe, expect, it } from 'vitest';
import type { Project } from '../../../src/core/project.ts';
import { formatChart } from '../../../src/core/song/chart.ts';
import { FORM_TEMPLATES } from '../../../src/core/song/templates.ts';
import { projectFaults } from '../../../src/formats/projectFaults.ts';
import { addTemplate, startFromTemplate } from '../../../src/state/edits/templates.ts';
import {
  majorKey,
  meter,
  minorKey,
  pitchClass,
  section,
  slots,
  song,
} from '../../support/music.ts';
import { project } from '../../support/project.ts';

function template(name: string) {
  const found = FORM_TEMPLATES.find((each) => each.name === name);
  if (!found) throw new Error(`no template ${name}`);
  return found;
}

function formOf({ song: { sections, form } }: Project): (string | undefined)[] {
  return form.map((entry) => sections.find(({ id }) => id === entry.sectionId)?.name);
}

const LILT = section('lilt', { meter: meter('6/8'), slots: slots('| C |', '6/8'), patternId: 'q' });
const BEFORE = project({
  song: song([section('Verse', { slots: slots('| C |'), patternId: 'p' }), LILT], 'Verse lilt'),
});

describe('a template', () => {
  it('is added after everything else, on the song’s tonic, under free names', () => {
    const after = addTemplate(template('Verse and chorus'))(BEFORE);
    expect(formOf(after).join(', ')).toBe(
      'Verse, lilt, Verse 2, Chorus, Verse 2, Chorus, Bridge, Chorus',
    );
    expect(after.song.sections.slice(0, 2)).toEqual(BEFORE.song.sections);
    expect(after.song.key).toEqual(majorKey('C'));
    // I V vi IV: common practice
    expect(formatChart(after.song.sections[2]!.slots.slice(0, 4), meter('4/4'))).toBe(
      '| C | G | Am | F |',
    );
  });

  it('takes the pattern of the song’s last section in its meter', () =>
    expect(
      addTemplate(template('32 bars, AABA'))(BEFORE)
        .song.sections.slice(2)
        .map(({ patternId }) => patternId),
    ).toEqual(['p', 'p']));

  it('can be added in the other mode and leaves the key', () => {
    const after = addTemplate(template('12-bar blues in minor'))(BEFORE);
    expect(after.song.key).toEqual(majorKey('C'));
    expect(formatChart(after.song.sections[2]!.slots.slice(0, 1), meter('4/4'))).toBe('| Cm7 |');
  });

  it('takes the place of the song’s sections, form and key', () => {
    const after = startFromTemplate(template('12-bar blues in minor'), pitchClass('F♯'))(BEFORE);
    expect(formOf(after)).toEqual(['Strophe']);
    expect(after.song.key).toEqual(minorKey('F♯'));
    expect(after.song.sections[0]).toMatchObject({ patternId: 'p' });
    expect({ ...after.song, ...BEFORE.song }).toEqual(BEFORE.song);
  });

  it.each(FORM_TEMPLATES.map((each) => [each.name, each] as const))(
    'gives a sound project twice over: %s',
    (_, each) => {
      const twice = addTemplate(each)(addTemplate(each)(BEFORE));
      expect(projectFaults(project({ ...twice, patterns: BEFORE.patterns }))).toEqual([
        { kind: 'not-there', path: 'song.sections[1].patternId' },
      ]);
    },
  );
});
