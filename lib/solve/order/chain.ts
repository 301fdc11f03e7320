/**
 * One item by itself, exactly: the cheapest packs for all who wait for it, freight apart, by a table over pieces bought.
 *
 * Who waits for an item may take it from shipments that are in time, and whoever can wait longer may take from more of
 * them. Where these sets lie one within the other, packs are enough if after the shipments of each set there are as many
 * pieces as those wait for who may take from no others.
 */
import type { Offer } from '@/lib/domain/shop/order';
import type { PackChoice } from './choices';

export interface Chain {
  /** In the order of the sets; those of the smallest first. */
  readonly choices: readonly PackChoice[];
  /** After so many choices there must be so many pieces. */
  readonly needed: readonly { readonly after: number; readonly pieces: number }[];
  readonly pieces: number;
}

/** What so many packs cost; infinity where so few are not sold. */
export type PackCost = (choice: PackChoice, packs: number) => number;

export const plainCost: PackCost = ({ offer }, packs) =>
  packs === 0 ? 0 : (offer.steps.findLast(({ fromPacks }) => packs >= fromPacks)?.price ?? Infinity) * packs;

interface Way {
  readonly packs: number;
  readonly pieces: number;
  readonly cost: number;
}

/** Numbers of packs worth asking about: up to what is wanted, and where a cheaper step begins beyond that. */
const waysOf = (choice: PackChoice, pieces: number, cost: PackCost): readonly Way[] => {
  const { packSize, steps }: Offer = choice.offer;
  const enough = Math.ceil(pieces / packSize);
  const beyond = steps.map(({ fromPacks }) => fromPacks).filter((packs) => packs > enough);
  const counts = [...Array.from({ length: enough }, (_, packs) => packs + 1), ...beyond];
  return counts
    .map((packs) => ({ packs, pieces: packs * packSize, cost: cost(choice, packs) }))
    .filter((way) => Number.isFinite(way.cost));
};

/** Too few pieces after so many choices are no way on. */
const shut = (table: Float64Array, after: number, { needed, pieces }: Chain): void => {
  for (const each of needed) if (each.after === after) table.fill(Infinity, 0, Math.min(pieces, each.pieces));
};

/** `before[k][t]`: the least cost of t pieces, or of `pieces` and more, from the first k choices. */
const tables = (
  chain: Chain,
  cost: PackCost,
  { upTo = chain.choices.length, pieces = chain.pieces } = {},
) => {
  const first = new Float64Array(pieces + 1).fill(Infinity);
  first[0] = 0;
  shut(first, 0, chain);
  const before = [first];
  const taken: Int32Array[] = [];
  for (const [index, choice] of chain.choices.slice(0, upTo).entries()) {
    const last = before[index] ?? first;
    const next = last.slice();
    const by = new Int32Array(pieces + 1);
    for (const way of waysOf(choice, pieces, cost))
      for (let from = 0; from <= pieces; from += 1) {
        const sum = (last[from] as number) + way.cost;
        const to = Math.min(pieces, from + way.pieces);
        if (sum >= (next[to] as number)) continue;
        next[to] = sum;
        by[to] = way.packs * (pieces + 1) + from;
      }
    shut(next, index + 1, chain);
    before.push(next);
    taken.push(by);
  }
  return { before, taken };
};

export const leastCost = (chain: Chain, cost: PackCost): number =>
  tables(chain, cost).before.at(-1)?.[chain.pieces] ?? Infinity;

/** `behind[k][t]`: the least cost of what is still wanted where the first k choices have brought t pieces. */
const tablesBehind = (chain: Chain): readonly Float64Array[] => {
  const { choices, pieces } = chain;
  let next = new Float64Array(pieces + 1).fill(Infinity);
  next[pieces] = 0;
  shut(next, choices.length, chain);
  const behind = [next];
  for (const [index, choice] of [...choices.entries()].toReversed()) {
    const table = next.slice();
    for (const way of waysOf(choice, pieces, plainCost))
      for (let from = 0; from <= pieces; from += 1) {
        const sum = way.cost + (next[Math.min(pieces, from + way.pieces)] as number);
        if (sum < (table[from] as number)) table[from] = sum;
      }
    shut(table, index, chain);
    behind.unshift(table);
    next = table;
  }
  return behind;
};

/**
 * By x from 0 to `most`: the least cost for all who wait and for x pieces more, which must come from the first `after`
 * choices. Infinity where that can't be.
 */
export const leastWithMore = (chain: Chain, after: number, most: number): Float64Array => {
  const pieces = chain.pieces + most;
  const before = tables(chain, plainCost, { upTo: after, pieces }).before.at(-1);
  const behind = tablesBehind(chain)[after];
  const least = new Float64Array(most + 1).fill(Infinity);
  if (before === undefined || behind === undefined) return least;
  for (let more = 0; more <= most; more += 1)
    for (let got = more; got <= pieces; got += 1) {
      const sum = (before[got] as number) + (behind[Math.min(chain.pieces, got - more)] as number);
      if (sum < (least[more] as number)) least[more] = sum;
    }
  return least;
};

export interface Cheapest {
  readonly least: number;
  /** One cheapest choice: packs of each. */
  readonly packs: readonly number[];
}

export const cheapest = (chain: Chain): Cheapest => {
  const { before, taken } = tables(chain, plainCost);
  return { least: before.at(-1)?.[chain.pieces] ?? Infinity, packs: traced(chain, taken) };
};

export interface Narrowed extends Cheapest {
  /** Whether the item can have so many packs of a choice and still cost no more than `most`. */
  readonly mayHave: (index: number, packs: number, most: number) => boolean;
}

/** Both ways through the table, so that each choice can be asked about with the best of all others. */
export const narrowed = (chain: Chain): Narrowed => {
  const { choices, pieces } = chain;
  const { before, taken } = tables(chain, plainCost);
  const behind = tablesBehind(chain);
  return {
    least: before.at(-1)?.[pieces] ?? Infinity,
    packs: traced(chain, taken),
    mayHave: (index, packs, most) => {
      const choice = choices[index];
      const [left, right] = [before[index], behind[index + 1]];
      if (choice === undefined || left === undefined || right === undefined) return true;
      const own = plainCost(choice, packs);
      const added = packs * choice.offer.packSize;
      for (let from = 0; from <= pieces; from += 1)
        if ((left[from] as number) + own + (right[Math.min(pieces, from + added)] as number) <= most)
          return true;
      return false;
    },
  };
};

const traced = ({ choices, pieces }: Chain, taken: readonly Int32Array[]): readonly number[] => {
  const packs = choices.map(() => 0);
  let at = pieces;
  for (let index = choices.length - 1; index >= 0; index -= 1) {
    const by = taken[index]?.[at] ?? 0;
    if (by === 0) continue;
    packs[index] = Math.floor(by / (pieces + 1));
    at = by % (pieces + 1);
  }
  return packs;
};
