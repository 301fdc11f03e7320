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

/** `before[k][t]`: the least cost of t pieces, or all that are wanted, from the first k choices. */
const tables = (chain: Chain, cost: PackCost) => {
  const { choices, needed, pieces } = chain;
  const shut = (table: Float64Array, after: number): void => {
    for (const each of needed)
      if (each.after === after) table.fill(Infinity, 0, Math.min(pieces, each.pieces));
  };
  const first = new Float64Array(pieces + 1).fill(Infinity);
  first[0] = 0;
  shut(first, 0);
  const before = [first];
  const taken: Int32Array[] = [];
  for (const [index, choice] of choices.entries()) {
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
    shut(next, index + 1);
    before.push(next);
    taken.push(by);
  }
  return { before, taken };
};

export const leastCost = (chain: Chain, cost: PackCost): number =>
  tables(chain, cost).before.at(-1)?.[chain.pieces] ?? Infinity;

export interface Narrowed {
  readonly least: number;
  /** One cheapest choice: packs of each. */
  readonly packs: readonly number[];
  /** Whether the item can have so many packs of a choice and still cost no more than `most`. */
  readonly mayHave: (index: number, packs: number, most: number) => boolean;
}

/** Both ways through the table, so that each choice can be asked about with the best of all others. */
export const narrowed = (chain: Chain): Narrowed => {
  const { choices, pieces, needed } = chain;
  const { before, taken } = tables(chain, plainCost);
  const behind = choices.map(() => new Float64Array(pieces + 1));
  const end = new Float64Array(pieces + 1).fill(Infinity);
  end[pieces] = 0;
  behind.push(end);
  for (let index = choices.length - 1; index >= 0; index -= 1) {
    const choice = choices[index];
    const table = behind[index];
    const after = Float64Array.from(behind[index + 1] ?? end);
    for (const each of needed)
      if (each.after === index + 1) after.fill(Infinity, 0, Math.min(pieces, each.pieces));
    behind[index + 1] = after;
    if (choice === undefined || table === undefined) continue;
    table.set(after);
    for (const way of waysOf(choice, pieces, plainCost))
      for (let from = 0; from <= pieces; from += 1) {
        const sum = way.cost + (after[Math.min(pieces, from + way.pieces)] as number);
        if (sum < (table[from] as number)) table[from] = sum;
      }
  }
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
