import { expect, it } from 'vitest';
import { setVoicing } from '../../../src/state/edits/voicing.ts';
import { project } from '../../support/project.ts';

const PROJECT = project();

it('changes some of the voicing settings and keeps the rest', () => {
  const { voicing } = setVoicing({ manner: 'open', spanSemitones: 16 })(PROJECT);
  expect(voicing).toEqual({ ...PROJECT.voicing, manner: 'open', spanSemitones: 16 });
});

it('stays the very same where the settings say what they said', () =>
  expect(setVoicing({ ...PROJECT.voicing })(PROJECT)).toBe(PROJECT));
