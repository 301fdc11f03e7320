/** A YAML text with the place of everything in it. */
import { LineCounter, isAlias, isCollection, isMap, isScalar, isSeq, parseDocument } from 'yaml';
import type { Document, Node, Pair, YAMLMap } from 'yaml';

export type TreePath = readonly (string | number)[];

/** Counted from 1, as editors do. */
export interface Spot {
  readonly line: number;
  readonly column: number;
}

export interface TreeFault extends Spot {
  readonly code: 'yaml' | 'duplicate-key' | 'forbidden-key';
  readonly sentence: string;
  readonly path: TreePath;
}

export interface YamlTree {
  /** Syntax first; a text with faults of syntax has no value worth reading. */
  readonly faults: readonly TreeFault[];
  /** What the text says, as plain data. Throws a ReferenceError where aliases multiply beyond measure. */
  readonly toData: () => unknown;
  /** The nearest place that the text has for a path: the very value, else the key it would stand under. */
  readonly spotOf: (path: TreePath, onKey?: boolean) => Spot;
  /** The value exactly as it is typed, `8.80` and not 8.8; null where it is no single word. */
  readonly typedAt: (path: TreePath) => string | null;
}

/** Enough for shared lists of steps; a few lines of aliases of aliases would otherwise fill the memory. */
const MOST_ALIASES = 100;
/** One missing bracket can make an error of every line after it. */
const MOST_FAULTS = 20;

/** Throws a RangeError where brackets are nested deeper than the parser's stack. */
export const readYaml = (text: string): YamlTree => {
  const lineCounter = new LineCounter();
  // The parser's own search for equal keys compares each with all before it, which takes minutes on a large
  // file made for that; `faultsOfKeys` does it in one pass.
  const document = parseDocument(text, { lineCounter, uniqueKeys: false, prettyErrors: false });
  const stackError = document.errors.find(({ code }) => code === 'RESOURCE_EXHAUSTION');
  if (stackError !== undefined) throw new RangeError(stackError.message);
  const syntax = [...document.errors, ...document.warnings].slice(0, MOST_FAULTS).map((error): TreeFault => ({
    code: 'yaml',
    sentence: `This can’t be read as YAML: ${error.message}.`,
    path: [],
    ...spotAt(lineCounter, error.pos[0]),
  }));
  const indexes = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>();
  const pairIn = (map: YAMLMap, key: string): Pair | undefined => {
    let index = indexes.get(map);
    if (index === undefined) {
      index = indexOf(map);
      indexes.set(map, index);
    }
    return index.get(key);
  };
  return {
    faults: [...syntax, ...faultsOfKeys(document.contents, lineCounter)],
    toData: (): unknown => document.toJS({ maxAliasCount: MOST_ALIASES }) as unknown,
    spotOf: (path, onKey) => spotAt(lineCounter, offsetOf(document, pairIn, path, onKey ?? false)),
    typedAt: (path) => {
      const node = nodeAt(document, pairIn, path);
      return isScalar(node) && node.range ? text.slice(node.range[0], node.range[1]) : null;
    },
  };
};

type PairIn = (map: YAMLMap, key: string) => Pair | undefined;

const spotAt = (lineCounter: LineCounter, offset: number): Spot => {
  const { line, col } = lineCounter.linePos(offset);
  return { line: Math.max(1, line), column: Math.max(1, col) };
};

const keyText = (key: unknown): string => (isScalar(key) ? String(key.value) : '');

/** The first of equal keys, which is where the reader of a path looks. */
const indexOf = (map: YAMLMap): ReadonlyMap<string, Pair> => {
  const index = new Map<string, Pair>();
  for (const pair of map.items) {
    const key = keyText(pair.key);
    if (!index.has(key)) index.set(key, pair);
  }
  return index;
};

const startOf = (node: unknown): number | null =>
  (isScalar(node) || isCollection(node) || isAlias(node)) && node.range ? node.range[0] : null;

/** A value worth pointing at: a word or a list in brackets. Fields are told at the key that they stand under. */
const isPointedAt = (node: unknown): boolean => {
  if (isSeq(node)) return node.flow === true;
  return (isScalar(node) || isAlias(node)) && node.range ? node.range[1] > node.range[0] : false;
};

const offsetOf = (document: Document, pairIn: PairIn, path: TreePath, onKey: boolean): number => {
  let node: unknown = document.contents;
  let offset = startOf(node) ?? 0;
  for (const [depth, segment] of path.entries()) {
    if (isMap(node)) {
      const pair = pairIn(node, String(segment));
      if (pair === undefined) return offset;
      offset = startOf(pair.key) ?? offset;
      node = pair.value;
      const isLast = depth === path.length - 1;
      if (isPointedAt(node) && !(isLast && onKey)) offset = startOf(node) ?? offset;
    } else if (isSeq(node) && typeof segment === 'number') {
      node = node.items[segment];
      offset = startOf(node) ?? offset;
    } else return offset;
  }
  return offset;
};

const nodeAt = (document: Document, pairIn: PairIn, path: TreePath): unknown => {
  let node: unknown = document.contents;
  for (const segment of path) {
    if (isMap(node)) node = pairIn(node, String(segment))?.value;
    else if (isSeq(node) && typeof segment === 'number') node = node.items[segment];
    else return undefined;
  }
  return node;
};

const faultsOfKeys = (contents: Node | null, lineCounter: LineCounter): readonly TreeFault[] => {
  const faults: TreeFault[] = [];
  const walk = (node: unknown, path: TreePath): void => {
    if (isSeq(node)) node.items.forEach((item, at) => walk(item, [...path, at]));
    if (!isMap(node)) return;
    const first = new Map<string, number>();
    const twins = new Set<Pair>();
    for (const pair of node.items) {
      const key = keyText(pair.key);
      const here = [...path, key];
      const offset = startOf(pair.key) ?? startOf(node) ?? 0;
      const spot = spotAt(lineCounter, offset);
      const earlier = first.get(key);
      if (!isScalar(pair.key) || pair.key.value === null || key === '__proto__')
        faults.push({
          code: 'forbidden-key',
          sentence: `“${key}” can’t be a key. Write a single word.`,
          path: here,
          ...spot,
        });
      else if (earlier === undefined) first.set(key, offset);
      else {
        twins.add(pair);
        faults.push({
          code: 'duplicate-key',
          sentence: `“${key}” stands here a second time; the first is on line ${spotAt(lineCounter, earlier).line}. Keep one of them.`,
          path: here,
          ...spot,
        });
      }
      walk(pair.value, here);
    }
    // The first is read on with, so that what is said of it is said at its own place.
    if (twins.size > 0) node.items = node.items.filter((pair) => !twins.has(pair));
  };
  walk(contents, []);
  return faults;
};
