/** What can be bought: an offer in a shipment. Items that no want shares with another stand by themselves. */
import type { Offer, OrderProblem, Shipment } from '@/lib/domain/shop/order';
import type { Chain } from './chain';
import type { Want } from './wants';

export interface PackChoice {
  readonly shipment: Shipment;
  readonly offer: Offer;
}

/** Tables of more pieces take too long. */
export const MOST_PIECES = 3000;

/** Who waits for pieces of one item, and from which shipments they may come. */
export type Waiting = Pick<Want, 'shipments' | 'quantity'>;

/** The item’s table; null where it takes part in a substitution, or its shipments are no chain of sets. */
export const chainOf = (problem: OrderProblem, item: string, wants: readonly Want[]): Chain | null => {
  const own = wants.filter(({ items }) => items.includes(item));
  return own.some(({ items }) => items.length > 1) ? null : chainFor(problem, item, own);
};

/** Null where the shipments of those who wait are no chain of sets. */
export const chainFor = (problem: OrderProblem, item: string, waiting: readonly Waiting[]): Chain | null => {
  const own = waiting.toSorted((a, b) => a.shipments.length - b.shipments.length);
  const pieces = own.reduce((sum, { quantity }) => sum + quantity, 0);
  if (pieces > MOST_PIECES) return null;
  const choices: PackChoice[] = [];
  const needed: { after: number; pieces: number }[] = [];
  let sum = 0;
  const seen = new Set<Shipment>();
  for (const { shipments, quantity } of own) {
    if (![...seen].every((shipment) => shipments.includes(shipment))) return null;
    for (const shipment of shipments) {
      if (seen.has(shipment)) continue;
      seen.add(shipment);
      for (const offer of problem.offers)
        if (offer.item === item && offer.supplier === shipment.supplier.key)
          choices.push({ shipment, offer });
    }
    sum += quantity;
    needed.push({ after: choices.length, pieces: sum });
  }
  return { choices, needed, pieces };
};
