/** Work that waits for itself: no order of it can ever be found. */
import { momentsOf } from './check-moments';
import type { Moments, Want } from './check-moments';
import { waysToChoose } from './check-options';
import type { PlanReading } from './check-reading';
import { problem } from './problem';
import type { Problem, ProblemPath } from './problem';

/** A plan with more rings than this is read again once the first are gone. */
const MOST_CYCLES = 50;
/** Each search walks the tangle once; a plan of thousands of rings must not take minutes to say so. */
const MOST_SEARCHES = 2000;

interface Edge {
  readonly to: string;
  readonly path: ProblemPath | null;
}
type Edges = ReadonlyMap<string, readonly Edge[]>;

/** Each ring of needs once, whatever options bring it about; the path is the need that it is written with. */
export const checkCycles = (reading: PlanReading): Problem[] => {
  // Stricter than any car: every element at once, and every alternative asked for. Mostly that settles it.
  const everything = momentsOf(reading, null);
  const core = ringsOnly(edgesAmong(everything, stuckIn(everything, true), 'all'));
  if (core.size === 0) return [];
  const found = new Map<string, Problem>();
  for (const chosen of waysToChoose(whensAround(everything, core), reading.document)) {
    const moments = momentsOf(reading, chosen);
    const edges = ringsOnly(edgesAmong(moments, stuckIn(moments, false), 'first'));
    for (const ring of ringsIn(edges, moments)) {
      const id = ring.join('\n');
      if (!found.has(id)) found.set(id, report(ring, edges, moments));
    }
    if (found.size >= MOST_CYCLES) break;
  }
  return [...found.values()];
};

/** Rings, until every need that lies on one has been told with one of them. */
const ringsIn = (edges: Edges, moments: Moments): readonly (readonly string[])[] => {
  const order = new Map([...moments.keys()].map((id, at) => [id, at]));
  const rings: (readonly string[])[] = [];
  const told = new Set<string>();
  let searches = 0;
  for (const [from, list] of edges)
    for (const { to, path } of list) {
      if (path === null || told.has(`${from}\n${to}`)) continue;
      searches += 1;
      if (searches > MOST_SEARCHES || rings.length >= MOST_CYCLES) return rings;
      const way = shortestWay(edges, to, from);
      if (way === null) continue;
      way.forEach((id, at) => told.add(`${id}\n${way[at + 1] ?? to}`));
      rings.push(fromEarliest(way, order));
    }
  return rings;
};

/** Moments that can never come. Strict: a want asks for all that it names; else any one of them will do. */
const stuckIn = (moments: Moments, isStrict: boolean): ReadonlySet<string> => {
  const waiting = new Map<string, { readonly id: string; readonly want: Want }[]>();
  const left = new Map<string, number>();
  for (const [id, { wants }] of moments) {
    left.set(id, isStrict ? wants.reduce((sum, want) => sum + want.anyOf.length, 0) : wants.length);
    for (const want of wants)
      for (const each of want.anyOf) {
        const list = waiting.get(each) ?? [];
        list.push({ id, want });
        waiting.set(each, list);
      }
  }
  const met = new Map<string, Set<Want>>();
  const reached = [...left].filter(([, count]) => count === 0).map(([id]) => id);
  for (let next = reached.pop(); next !== undefined; next = reached.pop()) {
    for (const { id, want } of waiting.get(next) ?? []) {
      const done = met.get(id) ?? new Set<Want>();
      if (!isStrict && done.has(want)) continue;
      met.set(id, done.add(want));
      const count = (left.get(id) ?? 0) - 1;
      left.set(id, count);
      if (count === 0) reached.push(id);
    }
  }
  return new Set([...left].filter(([, count]) => count > 0).map(([id]) => id));
};

/** What each stuck moment waits for. Of alternatives that are all stuck the first in the file stands for them. */
const edgesAmong = (moments: Moments, stuck: ReadonlySet<string>, alternatives: 'all' | 'first'): Edges => {
  const edges = new Map<string, readonly Edge[]>();
  for (const id of stuck) {
    const wants = moments.get(id)?.wants ?? [];
    edges.set(
      id,
      wants.flatMap(({ anyOf, path }) => {
        if (alternatives === 'first') {
          const blocked = anyOf.every((each) => stuck.has(each)) ? anyOf.slice(0, 1) : [];
          return blocked.map((to) => ({ to, path }));
        }
        return anyOf.filter((each) => stuck.has(each)).map((to) => ({ to, path }));
      }),
    );
  }
  return edges;
};

/** Without the moments that only wait behind a ring: nothing in the graph waits for them. */
const ringsOnly = (edges: Edges): Edges => {
  const awaited = new Map<string, number>();
  for (const list of edges.values()) for (const { to } of list) awaited.set(to, (awaited.get(to) ?? 0) + 1);
  const kept = new Map(edges);
  const loose = [...edges.keys()].filter((id) => !awaited.has(id));
  for (let next = loose.pop(); next !== undefined; next = loose.pop()) {
    for (const { to } of kept.get(next) ?? []) {
      const count = (awaited.get(to) ?? 0) - 1;
      awaited.set(to, count);
      if (count === 0) loose.push(to);
    }
    kept.delete(next);
  }
  return kept;
};

/** Every `when` that decides whether a ring stands on a car, that of a way round it included. */
const whensAround = (moments: Moments, core: Edges): readonly (string | undefined)[] =>
  [...core.keys()].flatMap((id) => {
    const moment = moments.get(id);
    return [
      ...(moment?.whens ?? []),
      ...(moment?.wants ?? []).flatMap(({ when, anyOf }) => [
        when,
        ...anyOf.flatMap((each) => moments.get(each)?.whens ?? []),
      ]),
    ];
  });

const shortestWay = (edges: Edges, from: string, to: string): readonly string[] | null => {
  const cameFrom = new Map<string, string | null>([[from, null]]);
  const queue = [from];
  for (const id of queue) {
    if (id === to) {
      const way: string[] = [];
      for (let at: string | null = id; at !== null; at = cameFrom.get(at) ?? null) way.push(at);
      return way.reverse();
    }
    for (const edge of edges.get(id) ?? [])
      if (!cameFrom.has(edge.to)) {
        cameFrom.set(edge.to, id);
        queue.push(edge.to);
      }
  }
  return null;
};

/** The same ring always begins at the same moment, so that it is told once. */
const fromEarliest = (ring: readonly string[], order: ReadonlyMap<string, number>): readonly string[] => {
  const places = ring.map((id) => order.get(id) ?? Infinity);
  const at = places.reduce((best, place, here) => (place < (places[best] ?? Infinity) ? here : best), 0);
  return [...ring.slice(at), ...ring.slice(0, at)];
};

const report = (ring: readonly string[], edges: Edges, moments: Moments): Problem => {
  const labels = [...ring, ring[0] ?? ''].map((id) => moments.get(id)?.label ?? id);
  const shown = labels.filter((label, at) => label !== labels[at - 1]);
  const written = ring.flatMap((id, at) => {
    const next = ring[at + 1] ?? ring[0];
    return (edges.get(id) ?? []).flatMap((edge) =>
      edge.to === next && edge.path !== null ? [edge.path] : [],
    );
  });
  // A ring of one operation that waits for itself shows its name once: say it twice.
  const names = shown.length === 1 ? [...shown, ...shown] : shown;
  return problem('cycle', written[0] ?? [], { cycle: shortened(names).join(' → ') });
};

/** A ring of hundreds is told by its ends. */
const shortened = (names: readonly string[]): readonly string[] =>
  names.length <= 24 ? names : [...names.slice(0, 12), '…', ...names.slice(-11)];
