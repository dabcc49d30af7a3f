import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlayRequest } from '../../src/app/score.ts';
import type { Project } from '../../src/core/project.ts';
import { onFakeTime } from '../support/fakePlayback.ts';
import { section, slots, song } from '../support/music.ts';
import { pattern } from '../support/patterns.ts';
import { project } from '../support/project.ts';
import { anyCommand, type Command } from '../support/soakCommands.ts';
import { IS_SOAK } from '../support/soakSize.ts';

const SONG: PlayRequest = { kind: 'song', times: 'until-stopped' };

/** How often the player wakes: as it should, now and then, as seldom as its look-ahead bears. */
const anyTick = fc.constantFrom(0.025, 0.09, 0.15);

/** A verse and a chorus in turn, called as `anyEdit` calls them. */
function soakProject(): Project {
  const verse = section('verse', { slots: slots('| C | F |'), patternId: 'p' });
  const chorus = section('chorus', { slots: slots('| Am | G / C / |'), patternId: 'p' });
  return project({
    song: song([verse, chorus], 'verse chorus verse'),
    patterns: [pattern('4/4', { left: 'R---5---', right: '--C---C-' })],
  });
}

async function faultsAfter(commands: readonly Command[], tickSec: number): Promise<string[]> {
  const { pass, playback, store, log } = onFakeTime(soakProject());
  await playback.play(SONG);
  for (const command of commands) {
    await command.act({ playback, store });
    const { status } = playback.state();
    if ((status === 'playing') !== log.isRunning()) return [`${status} after ${command.name}`];
    // In pieces, so that nothing escapes the log and the page's own watch gets its turn.
    for (let left = command.waitSec; left > 0; left -= 0.4) pass(Math.min(left, 0.4), tickSec);
    playback.position();
  }
  pass(0.5);
  playback.stop();
  pass(1);
  return log.faults();
}

describe('whatever is pressed when', () => {
  it('loses no note, strikes none twice, late or out of nowhere, and never goes back', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(anyCommand(soakProject()), { maxLength: 40, size: 'max' }),
        anyTick,
        async (commands, tickSec) => {
          const faults = await faultsAfter(commands, tickSec);
          const done = commands.map(({ name, waitSec }) => `${name}, ${waitSec} s`);
          expect(faults.slice(0, 5), done.join('\n')).toEqual([]);
        },
      ),
      IS_SOAK ? { numRuns: 3000 } : { numRuns: 60, seed: 20_240_611 },
    );
  }, 300_000);
});
