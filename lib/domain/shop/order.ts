/**
 * The week's order as a problem: what is needed by when and for which cars, who offers it, and what the owner has
 * pinned. `order-score.ts` says what an answer to it costs and what is wrong with it.
 *
 * Money is in its smallest unit, weight in grams, days are numbered (1 January 1970 is day 0): whole numbers all.
 */

export interface OrderLine {
  readonly key: string;
  readonly item: string;
  readonly quantity: number;
  /** The last day on which it may arrive. */
  readonly needBy: number;
  /** The cars that stand still without it; a car is late by as much as the latest of its lines. */
  readonly cars: readonly string[];
  /** Items that may come in place of the one asked for. */
  readonly substitutes: readonly string[];
}

/** All packs of an offer cost what the highest step reached says. */
export interface PriceStep {
  readonly fromPacks: number;
  readonly price: number;
}

export interface Offer {
  readonly key: string;
  readonly supplier: string;
  readonly item: string;
  readonly packSize: number;
  /** Ascending; the first step's packs are the fewest that are sold at all. */
  readonly steps: readonly PriceStep[];
  /** Of one pack. */
  readonly weight: number;
}

/** What is charged from a value or a weight on; ascending, and begins at 0. */
export interface Freight {
  readonly by: 'value' | 'weight';
  readonly steps: readonly { readonly from: number; readonly fee: number }[];
}

export interface Supplier {
  readonly key: string;
  /** On which weekdays the shop orders there: Monday is 1, Sunday 7. */
  readonly orderDays: readonly number[];
  /** Also takes an order on any other day, as one of its own with its own freight. */
  readonly takesToday: boolean;
  /** Days from order to arrival, those on which the shop is shut not counted. */
  readonly lead: number;
  readonly minimumValue: number;
  readonly freight: Freight;
}

/** What the owner insists on for a line. */
export interface Pin {
  readonly line: string;
  /** Pins of one group stand and fall together: what they cost is asked of all of them at once. */
  readonly group?: string;
  readonly supplier?: string;
  readonly quantity?: number;
  readonly buyToday?: boolean;
  readonly isExcluded?: boolean;
}

export interface OrderProblem {
  readonly today: number;
  readonly lines: readonly OrderLine[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
  readonly pins: readonly Pin[];
  /** Weekdays on which nothing comes in, Monday 1; none unless said. */
  readonly shut?: readonly number[];
}

/** One order to one supplier: its goods travel, and are charged freight, together. */
export interface Shipment {
  readonly key: string;
  readonly supplier: Supplier;
  readonly ordered: number;
  readonly arrives: number;
}

export interface OrderAnswer {
  readonly packs: readonly { readonly shipment: string; readonly offer: string; readonly packs: number }[];
  /** Which goods are for which line; what is over goes into stock. */
  readonly given: readonly {
    readonly line: string;
    readonly shipment: string;
    readonly item: string;
    readonly quantity: number;
  }[];
}

/** Day 0 was a Thursday. */
const weekdayOf = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;

const WEEK = 7;

/** When goods come that are ordered on that day. */
export const arrivalOf = (ordered: number, lead: number, shut: readonly number[] = []): number => {
  const isShut = (day: number): boolean => shut.length < WEEK && shut.includes(weekdayOf(day));
  let day = ordered;
  for (let left = lead; left > 0 || isShut(day); day += 1) if (!isShut(day)) left -= 1;
  return day;
};

/** The first day from that one on, itself included, on which the shop orders there; undefined = on none. */
export const orderDayFrom = ({ orderDays }: Pick<Supplier, 'orderDays'>, from: number): number | undefined =>
  Array.from({ length: WEEK }, (_, ahead) => from + ahead).find((day) => orderDays.includes(weekdayOf(day)));

/**
 * The last day, no earlier than `from`, on which an order there still comes by `need`; null = none does. Where the supplier
 * takes an order on any day, any day counts.
 */
export const lastOrderDay = (
  { orderDays, takesToday, lead }: Pick<Supplier, 'orderDays' | 'takesToday' | 'lead'>,
  from: number,
  need: number,
  shut: readonly number[] = [],
): number | null => {
  for (let day = need; day >= from; day -= 1)
    if ((takesToday || orderDays.includes(weekdayOf(day))) && arrivalOf(day, lead, shut) <= need) return day;
  return null;
};

/** The orders that can be sent: with each supplier the one of the next order day, and one of today where it takes that. */
export const shipmentsOf = ({
  suppliers,
  today,
  shut,
}: Pick<OrderProblem, 'suppliers' | 'today' | 'shut'>): readonly Shipment[] =>
  suppliers.flatMap((supplier) => {
    const next = orderDayFrom(supplier, today);
    const days = [
      ...(supplier.takesToday && next !== today ? [today] : []),
      ...(next === undefined ? [] : [next]),
    ];
    return days.map((ordered) => ({
      key: `${supplier.key}@${String(ordered)}`,
      supplier,
      ordered,
      arrives: arrivalOf(ordered, supplier.lead, shut),
    }));
  });

/** What is left to decide about a line once its pins are heard; null where it is excluded. */
export const askedOf = ({ pins }: OrderProblem, line: OrderLine): AskedLine | null => {
  const own = pins.filter((pin) => pin.line === line.key);
  if (own.some(({ isExcluded }) => isExcluded === true)) return null;
  return {
    quantity: own.find(({ quantity }) => quantity !== undefined)?.quantity ?? line.quantity,
    suppliers: own.flatMap(({ supplier }) => supplier ?? []),
    isToday: own.some(({ buyToday }) => buyToday === true),
  };
};

export interface AskedLine {
  readonly quantity: number;
  /** Only from all of these; any where empty. */
  readonly suppliers: readonly string[];
  readonly isToday: boolean;
}

export const mayCarry = (
  { today }: OrderProblem,
  { suppliers, isToday }: AskedLine,
  { supplier, ordered }: Shipment,
): boolean => suppliers.every((key) => key === supplier.key) && (!isToday || ordered === today);

export const itemsFor = ({ item, substitutes }: OrderLine): readonly string[] => [
  ...new Set([item, ...substitutes]),
];

export const daysLate = ({ needBy }: OrderLine, { arrives }: Shipment): number =>
  Math.max(0, arrives - needBy);

/** What one pack costs when so many are bought; null where that few are not sold. */
export const packPrice = ({ steps }: Offer, packs: number): number | null =>
  steps.findLast(({ fromPacks }) => packs >= fromPacks)?.price ?? null;

export const freightOf = ({ steps }: Freight, measure: number): number =>
  steps.findLast(({ from }) => measure >= from)?.fee ?? 0;
