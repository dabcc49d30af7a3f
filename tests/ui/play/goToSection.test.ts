import { expect, it } from 'vitest';
import type { Jump } from '../../../src/app/jump.ts';
import type { ViewChange } from '../../../src/ui/parts/tool/viewState.ts';
import { goToSection, goToSectionBeside } from '../../../src/ui/play/goToSection.ts';
import { section, slots, song } from '../../support/music.ts';
import { pageParts } from '../../support/pageParts.ts';
import { project } from '../../support/project.ts';

const verse = section('verse', { slots: slots('| C | F | G |') });
const chorus = section('chorus', { slots: slots('| Am | F |') });

/** A song of verse (bars 0 to 2), chorus (3, 4) and verse (5 to 7), and the jumps that are asked for. */
function parts(view: ViewChange = {}) {
  const made = pageParts(project({ song: song([verse, chorus], 'verse chorus verse') }), view);
  const jumps: Jump[] = [];
  return { ...made, jumps, playback: { ...made.playback, jump: (to: Jump) => jumps.push(to) } };
}

it('marks a section at rest, and the whole song again at the second time', () => {
  const at = parts();
  goToSection(at, 1);
  expect(at.view.snapshot().range).toEqual({ firstBar: 3, endBar: 5 });
  goToSection(at, 1);
  expect(at.view.snapshot().range).toBeUndefined();
  expect(at.jumps).toEqual([]);
});

it('jumps in the whole song, which goes on to its end', async () => {
  const at = parts();
  await at.playback.play({ kind: 'song', times: 1 });
  goToSection(at, 1);
  goToSectionBeside(at, 1);
  expect(at.jumps).toEqual([{ toBar: 3 }, { toBar: 3 }]);
});

it('goes round in the section that it goes to, where only a section was played', async () => {
  const at = parts();
  await at.playback.play({
    kind: 'song',
    range: { firstBar: 0, endBar: 3 },
    times: 'until-stopped',
  });
  goToSectionBeside(at, 1);
  const range = { firstBar: 3, endBar: 5 };
  expect(at.jumps).toEqual([{ toBar: 3, range }]);
  expect(at.view.snapshot().range).toEqual(range);
});

it('still plays up to the end, where that was asked for', async () => {
  const at = parts();
  await at.playback.play({ kind: 'song', range: { firstBar: 3, endBar: 8 }, times: 1 });
  goToSectionBeside(at, -1);
  expect(at.jumps).toEqual([{ toBar: 0, range: { firstBar: 0, endBar: 8 } }]);
});

it('goes back to the start of the section, and nowhere beyond the first and the last', async () => {
  const at = parts();
  await at.playback.play({ kind: 'song', range: { firstBar: 5, endBar: 8 }, times: 1 });
  goToSectionBeside(at, 1);
  expect(at.jumps).toEqual([]);
  goToSectionBeside(at, 0);
  expect(at.jumps).toEqual([{ toBar: 5, range: { firstBar: 5, endBar: 8 } }]);
});

it('leaves a drill alone', async () => {
  const at = parts();
  await at.playback.play({ kind: 'drill', rung: 0 });
  goToSectionBeside(at, 1);
  expect(at.jumps).toEqual([]);
  expect(at.view.snapshot().range).toBeUndefined();
});
