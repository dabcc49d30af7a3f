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

/**
 * The floors of `ui`, from the ground up. Each imports from itself and from the floors below it: kit is what any app
 * could use, a part is what several pages of this app show, a page has what it alone shows, the shell holds the pages.
 * Pages never import each other; parts may, as long as they run in no circle.
 */
const UI_FLOORS: Readonly<Record<string, readonly string[]>> = {
  kit: [''],
  parts: [
    'tool', // the running tool as pages see it: what they read, ask for and are told
    'song', // names, words and marks of a song and its sections
    'chart',
    'ribbon',
    'keyboard',
    'notation',
    'pattern', // words and choices about patterns
    'grid', // the pattern drawn around its count line
    'picture', // small pictures of patterns
    'transport', // tempo, click and hands of what plays
    'input', // what the player plays on
    'takes',
    'plan',
  ],
  pages: ['map', 'hands', 'rhythm', 'drill', 'play', 'recording', 'songs'],
  shell: [''],
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

type Place = { readonly floor: number; readonly room: string };

/** Where a file of `ui` stands; undefined where no floor of the table has it. */
function placeInUi(file: string): Place | undefined {
  const [, first = '', second = ''] = relative(SRC, file).split('/');
  const floors = Object.keys(UI_FLOORS);
  const [floor, room] =
    first === 'parts' ? [first, second] : first in UI_FLOORS ? [first, ''] : ['pages', first];
  if (!UI_FLOORS[floor]?.includes(room)) return undefined;
  return { floor: floors.indexOf(floor), room: room === '' ? floor : room };
}

function importsWithinUi(file: string): string[] {
  return importsOf(file)
    .filter((specifier) => specifier.startsWith('.'))
    .map((specifier) => resolve(dirname(file), specifier))
    .filter((target) => roomOf(target) === 'ui');
}

function climbs(from: Place, to: Place): boolean {
  if (from.floor === to.floor) return from.room !== to.room && from.floor !== PARTS_FLOOR;
  return to.floor > from.floor;
}

const PARTS_FLOOR = Object.keys(UI_FLOORS).indexOf('parts');

it('has every file of the interface on one of its floors', () => {
  const homeless = filesBelow(join(SRC, 'ui')).filter((file) => !placeInUi(file));
  expect(homeless.map((file) => relative(SRC, file))).toEqual([]);
});

it('lets no page import a page, no part a page and the kit nothing above it', () => {
  const climbing = filesBelow(join(SRC, 'ui')).flatMap((file) => {
    const from = placeInUi(file);
    return importsWithinUi(file).flatMap((target) => {
      const to = placeInUi(target);
      return from && to && climbs(from, to)
        ? [`${relative(SRC, file)} imports ${relative(SRC, target)}`]
        : [];
    });
  });
  expect(climbing).toEqual([]);
});

it('has no circle among the parts of the interface', () => {
  const uses = new Map<string, Set<string>>();
  for (const file of filesBelow(join(SRC, 'ui/parts'))) {
    const from = placeInUi(file)?.room ?? '';
    for (const target of importsWithinUi(file)) {
      const to = placeInUi(target);
      if (to?.floor !== PARTS_FLOOR || to.room === from) continue;
      uses.set(from, (uses.get(from) ?? new Set()).add(to.room));
    }
  }
  const reaches = (room: string, seen: Set<string>): Set<string> => {
    for (const next of uses.get(room) ?? []) if (!seen.has(next)) reaches(next, seen.add(next));
    return seen;
  };
  expect([...uses.keys()].filter((room) => reaches(room, new Set()).has(room))).toEqual([]);
});

it('keeps one concept to a file: no grab-bag names, no folder index', () => {
  const names = filesBelow(SRC).filter((f) =>
    /(utils?|helpers?|common|manager|services?|index)\.tsx?$/i.test(f),
  );
  expect(names).toEqual([]);
});
