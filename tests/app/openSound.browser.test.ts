import { afterEach, expect, it, vi } from 'vitest';
import { soundOpener } from '../../src/app/openSound.ts';
import { errorOf, valueOf } from '../support/music.ts';

afterEach(() => vi.unstubAllGlobals());

it('says that the sounds could not be loaded, and tries again at the next call', async () => {
  const openSound = soundOpener();
  vi.stubGlobal('fetch', async () => {
    throw new TypeError('the line is dead');
  });
  expect(errorOf(await openSound()).reason).toContain('the line is dead');
  vi.unstubAllGlobals();
  const sound = valueOf(await openSound());
  expect(sound.player.position()).toBeUndefined();
  sound.player.dispose();
});
