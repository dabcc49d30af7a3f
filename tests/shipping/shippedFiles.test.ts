import { expect, it } from 'vitest';
import { cacheName, outdatedCaches, sha256Of } from '../../src/shipping/shippedFiles.ts';

const current = { version: 'c', files: [] };
const named = (...versions: string[]) =>
  versions.map((version) => cacheName({ version, files: [] }));

it('keeps the version in use and the one before it, and lets older ones go', () => {
  expect(outdatedCaches(named('a', 'b', 'c'), current)).toEqual(named('a'));
});

it('lets nothing go while there is only one older version', () => {
  expect(outdatedCaches(named('b', 'c'), current)).toEqual([]);
});

it('leaves what others keep under the same address alone', () => {
  expect(outdatedCaches(['other app', ...named('a', 'b', 'c')], current)).toEqual(named('a'));
});

it('computes SHA-256', async () => {
  // FIPS 180-2, appendix B.1: the message "abc".
  expect(await sha256Of(new TextEncoder().encode('abc'))).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
});
