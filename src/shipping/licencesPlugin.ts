import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** The licence texts in the built app, beside the page. */
export const LICENCES_FILE = 'licences.txt';

type PackageFacts = {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
};

/** Files of sounds that ship with who made them and on which terms, from the project's root. */
const CREDIT_FILES = ['src/audio/samples/CREDITS.md', 'src/audio/samples/count/CREDITS.md'];

function factsIn(folder: string): PackageFacts {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as PackageFacts;
}

/** The packages that the app is built on, and theirs, each once, sorted by name. */
function shippedPackages(root: string): PackageFacts[] {
  const found = new Map<string, PackageFacts>();
  const visit = ({ dependencies = {} }: PackageFacts) => {
    for (const name of Object.keys(dependencies)) {
      if (found.has(name)) continue;
      const facts = factsIn(join(root, 'node_modules', name));
      found.set(name, facts);
      visit(facts);
    }
  };
  visit(factsIn(root));
  return [...found.values()].toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

function licenceText(root: string, name: string): string | undefined {
  const folder = join(root, 'node_modules', name);
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|ofl)(\.(md|txt))?$/i.test(entry));
  return file && readFileSync(join(folder, file), 'utf8').trim();
}

/** Every package and sound that ships, with its terms in full; a package without a text is named with its licence. */
function licences(root: string): string {
  const packages = shippedPackages(root).map(({ name, version, license = 'see its text' }) =>
    [`${name} ${version} (${license})`, licenceText(root, name) ?? ''].join('\n\n').trim(),
  );
  const sounds = CREDIT_FILES.map((file) => readFileSync(join(root, file), 'utf8').trim());
  const rule = `\n\n${'-'.repeat(72)}\n\n`;
  return `What Vampwright is built on, and the terms it comes under.${rule}${[...sounds, ...packages].join(rule)}\n`;
}

/** Puts the licence texts of everything that ships into the build. */
export function licencesPlugin(): Plugin {
  let root = '';
  return {
    name: 'licences',
    apply: 'build',
    configResolved(config) {
      root = config.root;
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: LICENCES_FILE, source: licences(root) });
    },
  };
}
