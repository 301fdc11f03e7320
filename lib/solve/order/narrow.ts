/**
 * What the best order can’t have, found before the program is written: a plan by hand rules says how much the best order
 * costs at most, each item’s table how much it costs at least; what costs more than the room between is left out.
 */
import { shipmentsOf } from '@/lib/domain/shop/order';
import type { OrderAnswer, OrderProblem, Shipment } from '@/lib/domain/shop/order';
import { orderScore } from '@/lib/domain/shop/order-score';
import { leastCost, narrowed, plainCost } from './chain';
import type { Chain, Narrowed, PackCost } from './chain';
import { chainOf } from './choices';
import type { PackChoice } from './choices';
import { solveBySplits } from './splits';
import type { Want } from './wants';

export interface Item {
  readonly item: string;
  readonly chain: Chain;
  readonly table: Narrowed;
}

export type Bought = readonly (PackChoice & { readonly packs: number })[];

/** Items that stand in for one another, or whose shipments are no chain: solved together, freight apart. */
export interface Cluster {
  readonly wants: readonly Want[];
  /** No packs for them cost less. */
  readonly least: number;
  /** Null where none were found in time. */
  readonly bought: Bought | null;
}

export interface Narrowing {
  readonly items: readonly Item[];
  /** An order that can be sent, by what it costs; null where the hand rules found none. */
  readonly known: { readonly money: number; readonly bought: Bought } | null;
  /** No order costs less. */
  readonly least: number;
  /** Steps of a shipment’s freight (or −1: not sent) that the best order can’t be in. */
  readonly isOut: (shipment: Shipment, step: number) => boolean;
}

/** `solveCluster` is asked for what no table can answer. */
export const narrow = async (
  problem: OrderProblem,
  wants: readonly Want[],
  solveCluster: (wants: readonly Want[]) => Promise<Cluster>,
): Promise<Narrowing> => {
  const names = [...new Set(wants.flatMap((want) => want.items))];
  const items = names.flatMap((item): Item[] => {
    const chain = chainOf(problem, item, wants);
    return chain === null ? [] : [{ item, chain, table: narrowed(chain) }];
  });
  const tabled = new Set(items.map(({ item }) => item));
  const clusters: Cluster[] = [];
  for (const group of together(wants.filter((want) => !want.items.some((item) => tabled.has(item)))))
    clusters.push(solveBySplits(problem, group) ?? (await solveCluster(group)));
  const goods =
    items.reduce((sum, { table }) => sum + table.least, 0) +
    clusters.reduce((sum, { least }) => sum + least, 0);
  const known = asOrder(problem, items, clusters);
  if (known === null) return { items, known, least: goods, isOut: () => false };
  const keys = new Set(wants.flatMap((want) => want.shipments.map(({ key }) => key)));
  const shipments = shipmentsOf(problem).filter(({ key }) => keys.has(key));
  const out = new Set<string>();
  const feeOf = (shipment: Shipment, step: number): number => shipment.supplier.freight.steps[step]?.fee ?? 0;
  const stepsOf = (shipment: Shipment): readonly number[] => [-1, ...shipment.supplier.freight.steps.keys()];
  const leastFee = (shipment: Shipment): number =>
    Math.min(
      ...stepsOf(shipment)
        .filter((step) => !out.has(`${shipment.key} ${String(step)}`))
        .map((step) => feeOf(shipment, step)),
    );
  // Twice: what is out for one shipment leaves less room for the others.
  for (let round = 0; round < 2; round += 1)
    for (const shipment of shipments) {
      const others = shipments
        .filter((each) => each !== shipment)
        .reduce((sum, each) => sum + leastFee(each), 0);
      for (const step of stepsOf(shipment)) {
        const key = `${shipment.key} ${String(step)}`;
        if (out.has(key)) continue;
        const fee = feeOf(shipment, step) + others;
        if (goods + fee >= known.money || isDearer(items, clusters, shipment, step, known.money - fee))
          out.add(key);
      }
    }
  const least =
    goods + shipments.reduce((sum, each) => sum + (Number.isFinite(leastFee(each)) ? leastFee(each) : 0), 0);
  const isClosed = shipments.some((each) => !Number.isFinite(leastFee(each)));
  return {
    items,
    known,
    // Where nothing is left for a shipment, nothing is better than what is known.
    least: isClosed ? known.money : Math.min(known.money, least),
    isOut: (shipment, step) => out.has(`${shipment.key} ${String(step)}`),
  };
};

/** Wants that have items in common, directly or by others. */
const together = (wants: readonly Want[]): readonly (readonly Want[])[] => {
  const groups: { readonly items: Set<string>; readonly wants: Want[] }[] = [];
  for (const want of wants) {
    const touching = groups.filter(({ items }) => want.items.some((item) => items.has(item)));
    const merged = { items: new Set(want.items), wants: [...touching.flatMap((group) => group.wants), want] };
    for (const group of touching) {
      for (const item of group.items) merged.items.add(item);
      groups.splice(groups.indexOf(group), 1);
    }
    groups.push(merged);
  }
  return groups.map((group) => group.wants);
};

/** Each item’s cheapest packs, if the suppliers take such orders. */
const asOrder = (
  problem: OrderProblem,
  items: readonly Item[],
  clusters: readonly Cluster[],
): Narrowing['known'] => {
  if (clusters.some((cluster) => cluster.bought === null)) return null;
  const bought = [
    ...clusters.flatMap((cluster) => cluster.bought ?? []),
    ...items.flatMap(({ chain, table }) =>
      chain.choices.flatMap((choice, index) => {
        const packs = table.packs[index] ?? 0;
        return packs > 0 ? [{ ...choice, packs }] : [];
      }),
    ),
  ];
  const { money, faults } = orderScore(problem, { packs: asRows(bought), given: [] });
  return faults.some(({ code }) => code !== 'line-short') ? null : { money, bought };
};

export const asRows = (bought: Bought): OrderAnswer['packs'] =>
  bought.map(({ shipment, offer, packs }) => ({ shipment: shipment.key, offer: offer.key, packs }));

/** Prices for the measure are tried in this many parts of a unit of money. */
const PARTS = 256;

/**
 * Whether goods cost at least `most` where the shipment keeps below the next step: each gram, or each penny, of the
 * shipment gets a price, and the room of the step is sold at it. Any price gives a true bound.
 */
const isDearer = (
  items: readonly Item[],
  clusters: readonly Cluster[],
  shipment: Shipment,
  step: number,
  most: number,
): boolean => {
  const plainly = clusters.reduce((sum, { least }) => sum + least, 0);
  const { freight } = shipment.supplier;
  const next = freight.steps[step + 1]?.from;
  if (next === undefined) return false;
  const room = step < 0 ? 0 : next - 1;
  const measureOf = ({ offer }: PackChoice, cost: number, packs: number): number =>
    freight.by === 'value' || step < 0 ? cost : offer.weight * packs;
  const tried = step < 0 ? [PARTS * 64] : freight.by === 'value' ? [16, 64, 160] : [4, 16, 48, 128];
  return tried.some((price) => {
    const cost: PackCost = (choice, packs) => {
      const plain = plainCost(choice, packs);
      const isOwn = choice.shipment.key === shipment.key;
      return plain * PARTS + (isOwn ? price * measureOf(choice, plain, packs) : 0);
    };
    const sum = items.reduce((total, { chain }) => total + leastCost(chain, cost), 0);
    return plainly + Math.ceil((sum - price * room) / PARTS) >= most;
  });
};
