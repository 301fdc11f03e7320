/** What an answer to the week's order costs, how late it makes which car, and everything that is wrong with it. */
import { askedOf, daysLate, freightOf, itemsFor, mayCarry, packPrice, shipmentsOf } from './order';
import type { OrderAnswer, OrderProblem, Shipment } from './order';

export type OrderFault =
  | { readonly code: 'unknown-offer'; readonly offer: string }
  | { readonly code: 'unknown-shipment'; readonly shipment: string }
  | { readonly code: 'unknown-line'; readonly line: string }
  | { readonly code: 'not-a-count'; readonly of: string; readonly number: number }
  | { readonly code: 'other-supplier'; readonly offer: string; readonly shipment: string }
  | { readonly code: 'nobody-wants'; readonly item: string; readonly offer: string }
  | {
      readonly code: 'too-few-packs';
      readonly offer: string;
      readonly packs: number;
      readonly fewest: number;
    }
  | {
      readonly code: 'below-minimum-order';
      readonly shipment: string;
      readonly value: number;
      readonly least: number;
    }
  | { readonly code: 'line-short'; readonly line: string; readonly given: number; readonly wanted: number }
  | { readonly code: 'no-such-substitute'; readonly line: string; readonly item: string }
  | { readonly code: 'against-a-pin'; readonly line: string; readonly shipment: string }
  | {
      readonly code: 'given-twice';
      readonly shipment: string;
      readonly item: string;
      readonly given: number;
      readonly bought: number;
    };

export interface ShipmentScore {
  readonly shipment: string;
  readonly goods: number;
  readonly weight: number;
  readonly freight: number;
}

export interface OrderScore {
  readonly faults: readonly OrderFault[];
  readonly shipments: readonly ShipmentScore[];
  readonly goods: number;
  readonly freight: number;
  /** Goods and freight. */
  readonly money: number;
  /** Of each late car, the days of its latest line. */
  readonly late: readonly { readonly car: string; readonly days: number }[];
  readonly lateCarDays: number;
}

export const orderScore = (problem: OrderProblem, answer: OrderAnswer): OrderScore => {
  const faults: OrderFault[] = [];
  const known = new Map(shipmentsOf(problem).map((shipment) => [shipment.key, shipment]));
  const sent = bought(problem, answer, known, faults);
  const days = given(problem, answer, known, sent.supply, faults);
  const late = [...days].filter(([, each]) => each > 0).map(([car, each]) => ({ car, days: each }));
  const goods = sent.shipments.reduce((sum, shipment) => sum + shipment.goods, 0);
  const freight = sent.shipments.reduce((sum, shipment) => sum + shipment.freight, 0);
  return {
    faults,
    shipments: sent.shipments,
    goods,
    freight,
    money: goods + freight,
    late,
    lateCarDays: late.reduce((sum, each) => sum + each.days, 0),
  };
};

/** Fewer late car-days first, then less money; below zero where `a` is the better. */
export const compareOrders = (
  a: Pick<OrderScore, 'lateCarDays' | 'money'>,
  b: Pick<OrderScore, 'lateCarDays' | 'money'>,
): number => a.lateCarDays - b.lateCarDays || a.money - b.money;

const supplyKey = (shipment: string, item: string): string => JSON.stringify([shipment, item]);

const isCount = (count: number): boolean => Number.isSafeInteger(count) && count > 0;

const bought = (
  problem: OrderProblem,
  { packs: rows }: OrderAnswer,
  known: ReadonlyMap<string, Shipment>,
  faults: OrderFault[],
) => {
  const wanted = wantedItems(problem);
  const offerOf = new Map(problem.offers.map((offer) => [offer.key, offer]));
  const totals = new Map<string, { shipment: string; offer: string; packs: number }>();
  for (const { shipment, offer, packs } of rows) {
    if (!isCount(packs)) faults.push({ code: 'not-a-count', of: offer, number: packs });
    const key = supplyKey(shipment, offer);
    totals.set(key, { shipment, offer, packs: (totals.get(key)?.packs ?? 0) + packs });
  }
  const supply = new Map<string, number>();
  const sums = new Map<string, { goods: number; weight: number }>();
  for (const { shipment, offer: key, packs } of totals.values()) {
    const offer = offerOf.get(key);
    const sent = known.get(shipment);
    if (offer === undefined) faults.push({ code: 'unknown-offer', offer: key });
    if (sent === undefined) faults.push({ code: 'unknown-shipment', shipment });
    if (offer === undefined || sent === undefined) continue;
    if (offer.supplier !== sent.supplier.key) faults.push({ code: 'other-supplier', offer: key, shipment });
    if (!wanted.has(offer.item)) faults.push({ code: 'nobody-wants', item: offer.item, offer: key });
    const price = packPrice(offer, packs);
    if (price === null)
      faults.push({ code: 'too-few-packs', offer: key, packs, fewest: offer.steps[0]?.fromPacks ?? 0 });
    const sum = sums.get(shipment) ?? { goods: 0, weight: 0 };
    sums.set(shipment, {
      goods: sum.goods + (price ?? offer.steps[0]?.price ?? 0) * packs,
      weight: sum.weight + offer.weight * packs,
    });
    const at = supplyKey(shipment, offer.item);
    supply.set(at, (supply.get(at) ?? 0) + offer.packSize * packs);
  }
  const shipments = [...sums].map(([shipment, { goods, weight }]): ShipmentScore => {
    const supplier = known.get(shipment)?.supplier;
    const least = supplier?.minimumValue ?? 0;
    if (goods < least) faults.push({ code: 'below-minimum-order', shipment, value: goods, least });
    const freight =
      supplier === undefined
        ? 0
        : freightOf(supplier.freight, supplier.freight.by === 'value' ? goods : weight);
    return { shipment, goods, weight, freight };
  });
  return { shipments, supply };
};

/** More than is asked for may be bought, of what is asked for. */
const wantedItems = (problem: OrderProblem): ReadonlySet<string> =>
  new Set(
    problem.lines.flatMap((line) => ((askedOf(problem, line)?.quantity ?? 0) > 0 ? itemsFor(line) : [])),
  );

/** How late each car is; faults of what is given to whom are added. */
const given = (
  problem: OrderProblem,
  { given: rows }: OrderAnswer,
  known: ReadonlyMap<string, Shipment>,
  supply: ReadonlyMap<string, number>,
  faults: OrderFault[],
): ReadonlyMap<string, number> => {
  const lineOf = new Map(problem.lines.map((line) => [line.key, line]));
  const late = new Map<string, number>();
  const got = new Map<string, number>();
  const spent = new Map<string, { shipment: string; item: string; given: number }>();
  for (const { line: key, shipment, item, quantity } of rows) {
    const line = lineOf.get(key);
    const sent = known.get(shipment);
    if (!isCount(quantity)) faults.push({ code: 'not-a-count', of: key, number: quantity });
    if (line === undefined) faults.push({ code: 'unknown-line', line: key });
    if (sent === undefined) faults.push({ code: 'unknown-shipment', shipment });
    if (line === undefined || sent === undefined) continue;
    const asked = askedOf(problem, line);
    if (!itemsFor(line).includes(item)) faults.push({ code: 'no-such-substitute', line: key, item });
    if (asked === null || !mayCarry(problem, asked, sent))
      faults.push({ code: 'against-a-pin', line: key, shipment });
    got.set(key, (got.get(key) ?? 0) + quantity);
    const at = supplyKey(shipment, item);
    spent.set(at, { shipment, item, given: (spent.get(at)?.given ?? 0) + quantity });
    for (const car of line.cars) late.set(car, Math.max(late.get(car) ?? 0, daysLate(line, sent)));
  }
  for (const line of problem.lines) {
    const wanted = askedOf(problem, line)?.quantity ?? 0;
    const has = got.get(line.key) ?? 0;
    if (has < wanted) faults.push({ code: 'line-short', line: line.key, given: has, wanted });
  }
  for (const [at, { shipment, item, given: number }] of spent) {
    const there = supply.get(at) ?? 0;
    if (number > there) faults.push({ code: 'given-twice', shipment, item, given: number, bought: there });
  }
  return late;
};
