import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, it } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

function filesOf(folder: string, kind: RegExp): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => kind.test(name))
    .map((name) => join(ROOT, folder, name));
}

const CODE = /\.tsx?$/;
const PAGES = [
  ...filesOf('docs', /\.md$/),
  join(ROOT, 'README.md'),
  join(ROOT, 'DEVELOPERS.md'),
] as const;

const read = (file: string) => readFileSync(file, 'utf8');
const named = (file: string, text: string) => `${relative(ROOT, file)}: ${text}`;

it('cites only sources that docs/sources.md has', () => {
  const sources = new Set(
    [...read(join(ROOT, 'docs/sources.md')).matchAll(/^## (.+)$/gm)].map(([, name]) => name),
  );
  const missing = [...filesOf('src', CODE), ...filesOf('tests', CODE), ...PAGES].flatMap((file) =>
    [...read(file).matchAll(/sources\.md#([\w-]+)/g)]
      .filter(([, name]) => !sources.has(name))
      .map(([cited]) => named(file, cited)),
  );
  expect(sources.size).toBeGreaterThan(10);
  expect(missing).toEqual([]);
});

it('has no link to a file that is not there', () => {
  const dead = PAGES.flatMap((file) =>
    [...read(file).matchAll(/\]\(([^)#:\s]+)(?:#[^)]*)?\)/g)]
      .filter(([, target = '']) => !existsSync(resolve(dirname(file), target)))
      .map(([link]) => named(file, link)),
  );
  expect(dead).toEqual([]);
});

/** Names that still mean two things. It only gets shorter: what is new takes a name of its own. */
const STILL_TWICE: readonly string[] = ['ChordReading', 'listenTo'];

it('exports no name from two files', () => {
  const homes = new Map<string, string[]>();
  for (const file of filesOf('src', CODE))
    for (const [, name = ''] of read(file).matchAll(
      /^export (?:async )?(?:function\*?|const|type|class) (\w+)/gm,
    ))
      homes.set(name, [...(homes.get(name) ?? []), relative(ROOT, file)]);
  const twice = [...homes]
    .filter(([name, files]) => files.length > 1 && !STILL_TWICE.includes(name))
    .map(([name, files]) => `${name}: ${files.join(', ')}`);
  expect(twice).toEqual([]);
});
