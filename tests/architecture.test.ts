import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, it } from 'vitest';

/** Which rooms and packages each room may import; a type import counts. `core/harmony` alone may see tonal. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  core: ['core'],
  signal: ['signal', 'core', 'fft.js'],
  formats: ['formats', 'core', 'midi-file', 'valibot'],
  audio: ['audio', 'core', 'tone'],
  input: ['input', 'core', 'signal'],
  state: ['state', 'core', 'formats', 'immer', 'idb', 'valibot'],
  shipping: ['shipping', 'vite', 'node:crypto', 'node:fs', 'node:path'],
  app: ['app', 'core', 'signal', 'formats', 'audio', 'input', 'state', 'shipping'],
  ui: [
    'ui',
    'core',
    'state',
    'app',
    'react',
    'react-dom',
    'vexflow',
    '@vexflow-fonts/leland',
    '@vexflow-fonts/academico',
  ],
};

const SRC = resolve(import.meta.dirname, '../src');
const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^;]*?from\s+'([^']+)'|import\(\s*'([^']+)'\s*\)|(?:^|\n)import\s+'([^']+)'/g;

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => join(folder, name));
}

function importsOf(file: string): string[] {
  return [...readFileSync(file, 'utf8').matchAll(IMPORT)].map((m) => m[1] ?? m[2] ?? m[3] ?? '');
}

function roomOf(path: string): string {
  return relative(SRC, path).split('/')[0] ?? '';
}

function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

function targetOf(file: string, specifier: string): string {
  return specifier.startsWith('.')
    ? roomOf(resolve(dirname(file), specifier))
    : packageOf(specifier);
}

function offences(file: string): string[] {
  const room = roomOf(file);
  const name = relative(SRC, file);
  if (name === 'main.tsx') return [];
  const allowed = MAY_IMPORT[room];
  if (!allowed) return [`${name}: no room is called ${room}`];
  return importsOf(file)
    .filter((specifier) => {
      const target = targetOf(file, specifier);
      if (target === 'tonal') return !name.startsWith('core/harmony/');
      return !allowed.includes(target);
    })
    .map((specifier) => `${name}: ${room} may not import ${specifier}`);
}

it('lets every room import only the rooms and packages it may', () => {
  const files = filesBelow(SRC);
  expect(files.length).toBeGreaterThan(20);
  expect(files.flatMap(offences)).toEqual([]);
});

it('keeps one concept to a file: no grab-bag names, no folder index', () => {
  const names = filesBelow(SRC).filter((f) =>
    /(utils?|helpers?|common|manager|services?|index)\.tsx?$/i.test(f),
  );
  expect(names).toEqual([]);
});
