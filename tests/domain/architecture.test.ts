import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

// The second lock on the rulebook. ESLint says the same with better words; this one does not depend on
// its plug-ins, its settings or its resolver, each of which can go quiet without anyone noticing.

const layers = ['base', 'plan', 'torque', 'car', 'shop'];

/** Path below lib/domain, with its text. */
type Sources = ReadonlyMap<string, string>;
type Edge = { from: string; to: string; isInside: boolean };

const bans: readonly [name: string, pattern: RegExp][] = [
  ['Date.now', /\bDate\s*\.\s*now\b/],
  ['new Date()', /\bnew\s+Date\s*(?:\(\s*\)|[;,)\]}])/],
  ['Math.random', /\bMath\s*\.\s*random\b/],
  ['process', /\bprocess(?:\.\w|\[)/],
  ['async', /\basync\s*(?:function\b|\*|\(|[\w$]+\s*(?:=>|\())/],
  ['await', /[=(,]\s*await\b|^\s*await\b|\bfor\s+await\b/m],
];

/** One pass over comments, strings and templates, so that `//` in a string is not taken for a comment. */
function blank(source: string, alsoStrings: boolean): string {
  return source.replace(
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g,
    (piece) => {
      if (piece.startsWith('/')) return ' ';
      return alsoStrings && !piece.startsWith('`') ? "''" : piece;
    },
  );
}

function importsOf(source: string): string[] {
  const text = blank(source, false);
  const patterns = [
    /^(?:import|export)\b[^;'"]*?\bfrom\s*['"]([^'"]+)['"]/gm,
    /^import\s*['"]([^'"]+)['"]/gm,
    /\bimport\s*\(\s*['"]([^'"]+)['"]/g,
  ];
  return patterns.flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] ?? ''));
}

function edgeOf(from: string, specifier: string): Edge {
  const path = specifier.startsWith('.')
    ? posix.join('lib/domain', posix.dirname(from), specifier)
    : specifier.replace(/^@\//, '');
  const isInside = /^(?:\.|@\/)/.test(specifier) && path.startsWith('lib/domain/');
  const to = isInside ? path.slice('lib/domain/'.length).replace(/\.[jt]s$/, '') + '.ts' : specifier;
  return { from, to, isInside };
}

const edgesOf = (sources: Sources): Edge[] =>
  [...sources].flatMap(([from, source]) => importsOf(source).map((specifier) => edgeOf(from, specifier)));

/** The files at the top of lib/domain stand above every layer; decide.ts and evolve.ts keep theirs in a folder each. */
const topFolders = ['decide', 'evolve'];

function rank(path: string): number {
  const folder = path.includes('/') ? path.slice(0, path.indexOf('/')) : undefined;
  return folder === undefined || topFolders.includes(folder) ? layers.length : layers.indexOf(folder);
}

const strangers = (sources: Sources): string[] => [...sources.keys()].filter((path) => rank(path) < 0);

const outsideImports = (sources: Sources): string[] =>
  edgesOf(sources)
    .filter((edge) => !edge.isInside)
    .map((edge) => `${edge.from} imports ${edge.to}`);

const upwardImports = (sources: Sources): string[] =>
  edgesOf(sources)
    .filter((edge) => edge.isInside && rank(edge.to) > rank(edge.from))
    .map((edge) => `${edge.from} imports ${edge.to}`);

/** Imports of types count too: two files that need each other's types are one file, or want a third. */
function cycles(sources: Sources): string[] {
  const next = new Map<string, string[]>();
  for (const edge of edgesOf(sources)) next.set(edge.from, [...(next.get(edge.from) ?? []), edge.to]);
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    if (trail.includes(path)) found.push([...trail.slice(trail.indexOf(path)), path].join(' > '));
    if (done.has(path) || trail.includes(path)) return;
    for (const target of next.get(path) ?? []) visit(target, [...trail, path]);
    done.add(path);
  };
  for (const path of sources.keys()) visit(path, []);
  return found;
}

function forbidden(sources: Sources): string[] {
  return [...sources].flatMap(([path, source]) => {
    const text = blank(source, true);
    return bans.filter(([, pattern]) => pattern.test(text)).map(([name]) => `${path} uses ${name}`);
  });
}

function readRulebook(): Sources {
  const root = fileURLToPath(new URL('../../lib/domain/', import.meta.url));
  const paths = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.ts'),
  );
  return new Map(
    paths.sort().map((path) => [path.split(sep).join('/'), readFileSync(join(root, path), 'utf8')]),
  );
}

describe('the rulebook', () => {
  const rulebook = readRulebook();

  test('is read at all', () => {
    expect(rulebook.size).toBeGreaterThan(0);
    // Every import of a file of this project was seen, by a cruder count than the one under test.
    const crude = [...rulebook.values()].flatMap(
      (source) => source.match(/^.*\bfrom '(?:\.|@\/).*';$/gm) ?? [],
    );
    expect(edgesOf(rulebook).length).toBeGreaterThanOrEqual(crude.length);
  });

  test('has no folder outside its layers', () => {
    expect(strangers(rulebook)).toEqual([]);
  });

  test('imports nothing from outside itself', () => {
    expect(outsideImports(rulebook)).toEqual([]);
  });

  test('imports downward only: base, plan, torque, car, shop, top', () => {
    expect(upwardImports(rulebook)).toEqual([]);
  });

  test('has no cycles', () => {
    expect(cycles(rulebook)).toEqual([]);
  });

  test('reads no clock, no chance, no process, and waits for nothing', () => {
    expect(forbidden(rulebook)).toEqual([]);
  });
});

describe('the lock itself', () => {
  const tree = (files: Record<string, string>): Sources => new Map(Object.entries(files));

  test.each([
    ['a package', "import { z } from 'zod';"],
    ['a Node module', "import 'node:fs';"],
    ['another part of the house, by alias', "import type { A } from '@/lib/wire/a';"],
    ['another part of the house, by path', "export {\n  a,\n} from '../../wire/a';"],
    ['a late import', "const load = () => import('yaml');"],
  ])('sees an import of %s', (_, source) => {
    expect(outsideImports(tree({ 'base/a.ts': source }))).toHaveLength(1);
  });

  test.each([
    ['base/a.ts', "import { b } from '../plan/b';"],
    ['torque/a.ts', "import { b } from '@/lib/domain/car/b';"],
    ['shop/a.ts', "import { b } from '../world';"],
    ['plan/a.ts', "export * from '../torque/b.ts';"],
  ])('sees the upward import in %s', (path, source) => {
    expect(upwardImports(tree({ [path]: source }))).toHaveLength(1);
  });

  test('lets downward imports pass, and what is only said in a comment', () => {
    const sources = tree({
      'assess.ts': "import { a } from './shop/a';\nimport { b } from '@/lib/domain/base/b';",
      'base/b.ts':
        "// import { x } from 'zod';\nimport { c } from './c';\nconst said = 'Date.now and async ()';",
    });
    expect([...outsideImports(sources), ...upwardImports(sources), ...forbidden(sources)]).toEqual([]);
    expect(edgesOf(sources)).toHaveLength(3);
  });

  test('sees a cycle over three files', () => {
    const sources = tree({
      'car/a.ts': "import type { B } from './b';",
      'car/b.ts': "import type { C } from './c';",
      'car/c.ts': "import type { A } from '@/lib/domain/car/a';",
    });
    expect(cycles(sources)).toEqual(['car/a.ts > car/b.ts > car/c.ts > car/a.ts']);
  });

  test.each([
    'const at = Date.now();',
    'const at = new Date();',
    'const chance = Math.random();',
    'const zone = process.env.TZ;',
    'const load = async () => 1;',
    'export async function load() {}',
    'const text = `${Date.now()}`;',
  ])('sees %s', (source) => {
    expect(forbidden(tree({ 'base/a.ts': source }))).toHaveLength(1);
  });
});
