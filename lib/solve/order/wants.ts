/**
 * Who may bring what: for each line the shipments that make no car later than it must be.
 *
 * The fewest late car-days need no solver. Each line can come with whichever shipment brings it first, whatever the other
 * lines do, for there is no end to what a supplier sells; so each car’s least lateness is that of its latest line, all
 * cars reach theirs at once, and a line may take any shipment that keeps within those of its cars.
 */
import { askedOf, daysLate, itemsFor, mayCarry, shipmentsOf } from '@/lib/domain/shop/order';
import type { Offer, OrderProblem, Shipment } from '@/lib/domain/shop/order';

/** Lines that can be answered by the same goods of the same shipments. */
export interface Want {
  readonly lines: readonly { readonly line: string; readonly quantity: number }[];
  readonly quantity: number;
  readonly items: readonly string[];
  readonly shipments: readonly Shipment[];
}

export interface Wants {
  readonly wants: readonly Want[];
  readonly lateCarDays: number;
  /** Lines that nobody offers, or nobody whom their pins allow. */
  readonly unserved: readonly string[];
}

export const wantsOf = (problem: OrderProblem): Wants => {
  const shipments = shipmentsOf(problem);
  const sold = new Map<string, Offer[]>();
  for (const offer of problem.offers) {
    const key = soldKey(offer.supplier, offer.item);
    sold.set(key, [...(sold.get(key) ?? []), offer]);
  }
  const unserved: string[] = [];
  const asked = problem.lines.flatMap((line) => {
    const wanted = askedOf(problem, line);
    if (wanted === null || wanted.quantity === 0) return [];
    const items = itemsFor(line);
    const carriers = shipments.filter(
      (shipment) =>
        mayCarry(problem, wanted, shipment) &&
        items.some((item) => sold.has(soldKey(shipment.supplier.key, item))),
    );
    if (carriers.length === 0) {
      unserved.push(line.key);
      return [];
    }
    const least = Math.min(...carriers.map((shipment) => daysLate(line, shipment)));
    return [{ line, quantity: wanted.quantity, items, carriers, least }];
  });
  const late = new Map<string, number>();
  for (const { line, least } of asked)
    for (const car of line.cars) late.set(car, Math.max(late.get(car) ?? 0, least));
  const wants = new Map<string, Want>();
  for (const { line, quantity, items, carriers } of asked) {
    const most = Math.min(...line.cars.map((car) => late.get(car) ?? 0));
    const allowed = carriers.filter((shipment) => daysLate(line, shipment) <= most);
    const key = JSON.stringify([items, allowed.map((shipment) => shipment.key)]);
    const want = wants.get(key);
    wants.set(key, {
      items,
      shipments: allowed,
      quantity: (want?.quantity ?? 0) + quantity,
      lines: [...(want?.lines ?? []), { line: line.key, quantity }],
    });
  }
  return {
    wants: [...wants.values()],
    lateCarDays: [...late.values()].reduce((sum, days) => sum + days, 0),
    unserved,
  };
};

const soldKey = (supplier: string, item: string): string => JSON.stringify([supplier, item]);
