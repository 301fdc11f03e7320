/**
 * Two items of which one may come in place of the other, exactly and without a program: once it is said how many pieces
 * come as which of the two, each item stands by itself and has its table (`chain.ts`). So all ways to say it are tried.
 */
import type { OrderProblem } from '@/lib/domain/shop/order';
import { cheapest, leastCost, leastWithMore, plainCost } from './chain';
import type { Chain } from './chain';
import { MOST_PIECES, chainFor } from './choices';
import type { Waiting } from './choices';
import type { Cluster } from './narrow';
import type { Want } from './wants';

/** One want is split by tables; of the others so many ways are tried, one after the other. */
const MOST_WAYS = 400;

/** Of each want between two items, how many pieces come as the second. */
type Split = ReadonlyMap<Want, number>;

/** Null where a want stands between more than two items, shipments are no chain, or there are too many ways. */
export const solveBySplits = (problem: OrderProblem, wants: readonly Want[]): Cluster | null => {
  const split = wants.filter(({ items }) => items.length > 1).sort((a, b) => b.quantity - a.quantity);
  const [open, ...others] = split;
  if (open === undefined || split.some(({ items }) => items.length > 2)) return null;
  if (others.reduce((ways, { quantity }) => ways * (quantity + 1), 1) > MOST_WAYS) return null;
  const names = [...new Set(wants.flatMap(({ items }) => items))];
  const apart = names.filter((item) => !open.items.includes(item));
  const [costOf, costsOf] = [remembered(leastCostNow), remembered(costsNow)];
  let [least, best]: [number, Split | null] = [Infinity, null];
  for (const ways of splitsOf(others)) {
    const chains = (items: readonly string[]): readonly (Chain | null)[] =>
      items.map((item) => chainFor(problem, item, waitingFor(item, wants, ways)));
    const [first = null, second = null] = chains(open.items);
    const rest = chains(apart);
    if (first === null || second === null || rest.includes(null)) return null;
    if (Math.max(first.pieces, second.pieces) + open.quantity > MOST_PIECES) return null;
    const fixed = rest.reduce((sum, chain) => sum + (chain === null ? 0 : costOf(chain, open)), 0);
    const [asFirst, asSecond] = [costsOf(first, open), costsOf(second, open)];
    for (let count = 0; count <= open.quantity; count += 1) {
      const cost = fixed + (asFirst[open.quantity - count] as number) + (asSecond[count] as number);
      if (cost < least) [least, best] = [cost, new Map([...ways, [open, count]])];
    }
  }
  return best === null ? null : { wants, least, bought: boughtBy(problem, wants, names, best) };
};

const leastCostNow = (chain: Chain): number => leastCost(chain, plainCost);

/** By how many pieces of the want it brings beside all else. */
const costsNow = (chain: Chain, { shipments, quantity }: Want): Float64Array => {
  const after = chain.choices.filter(({ shipment }) => shipments.includes(shipment)).length;
  return leastWithMore(chain, after, quantity);
};

/** Most ways change nothing for most items. Choices follow from the item, and what must be there from who waits. */
const remembered = <Cost>(cost: (chain: Chain, open: Want) => Cost) => {
  const known = new Map<string, Cost>();
  return (chain: Chain, open: Want): Cost => {
    const key = JSON.stringify([chain.choices[0]?.offer.item, chain.needed]);
    const found = known.get(key) ?? cost(chain, open);
    known.set(key, found);
    return found;
  };
};

function* splitsOf(wants: readonly Want[]): Generator<Split> {
  const [first, ...rest] = wants;
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const others of splitsOf(rest))
    for (let count = 0; count <= first.quantity; count += 1) yield new Map([...others, [first, count]]);
}

/** A want that no split names waits for nothing, and its shipments keep their place in the chain. */
const waitingFor = (item: string, wants: readonly Want[], split: Split): readonly Waiting[] =>
  wants.flatMap((want): readonly Waiting[] => {
    const { items, shipments, quantity } = want;
    if (!items.includes(item)) return [];
    if (items.length === 1) return [want];
    const asSecond = split.get(want);
    if (asSecond === undefined) return [{ shipments, quantity: 0 }];
    return [{ shipments, quantity: item === items[1] ? asSecond : quantity - asSecond }];
  });

const boughtBy = (
  problem: OrderProblem,
  wants: readonly Want[],
  names: readonly string[],
  split: Split,
): Cluster['bought'] =>
  names.flatMap((item) => {
    const chain = chainFor(problem, item, waitingFor(item, wants, split));
    if (chain === null) return [];
    const { packs } = cheapest(chain);
    return chain.choices.flatMap((choice, index) => {
      const count = packs[index] ?? 0;
      return count > 0 ? [{ ...choice, packs: count }] : [];
    });
  });
