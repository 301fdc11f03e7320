/** What can be bought: an offer in a shipment. Items that no want shares with another stand by themselves. */
import type { Offer, OrderProblem, Shipment } from '@/lib/domain/shop/order';
import type { Chain } from './chain';
import type { Want } from './wants';

export interface PackChoice {
  readonly shipment: Shipment;
  readonly offer: Offer;
}

/** Tables of more pieces take too long. */
const MOST_PIECES = 3000;

/** The item’s table; null where it takes part in a substitution, or its shipments are no chain of sets. */
export const chainOf = (problem: OrderProblem, item: string, wants: readonly Want[]): Chain | null => {
  const own = wants
    .filter(({ items }) => items.includes(item))
    .sort((a, b) => a.shipments.length - b.shipments.length);
  if (own.some(({ items }) => items.length > 1)) return null;
  const pieces = own.reduce((sum, { quantity }) => sum + quantity, 0);
  if (pieces > MOST_PIECES) return null;
  const choices: PackChoice[] = [];
  const needed: { after: number; pieces: number }[] = [];
  let waiting = 0;
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
    waiting += quantity;
    needed.push({ after: choices.length, pieces: waiting });
  }
  return { choices, needed, pieces };
};
