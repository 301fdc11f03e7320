/** An answer to the week's problem as people read it: with each supplier what is bought, in which packs, and for which car. */
import { ZERO, add, compare, divide, exact, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key } from '@/lib/domain/base/vocabulary';
import { packPrice, shipmentsOf } from './order';
import type { Offer, OrderAnswer } from './order';
import { orderScore } from './order-score';
import { dayFrom } from './week';
import type { Week, WeekGroup } from './week';

export interface WeekSheet {
  readonly shipment: string;
  readonly supplier: string;
  readonly ordered: Day;
  readonly arrives: Day;
  readonly goods: number;
  readonly freight: number;
  readonly lines: readonly SheetLine[];
}

/** What is bought of one item with one order. */
export interface SheetLine {
  readonly item: Key;
  /** Asked for, where this one comes in their place. */
  readonly insteadOf: readonly Key[];
  /** The earliest day on which it is needed; null = it fills the shelf. */
  readonly by: Day | null;
  /** The last day on which anybody could be asked for that; null = none is left, or it fills the shelf. */
  readonly orderBy: Day | null;
  /** It comes so many days after that. */
  readonly late: number;
  readonly cars: readonly { readonly car: CarId; readonly quantity: Exact }[];
  /** Up to the shelf's minimum. */
  readonly shelf: Exact;
  /** What nobody has asked for. */
  readonly spare: Exact;
  readonly packs: readonly Packs[];
  /** By one pack alone, cheapest first, for the same need; freight apart. */
  readonly others: readonly Packs[];
  readonly cost: number;
}

export interface Packs {
  readonly offer: string;
  readonly supplier: string;
  readonly packs: number;
  /** In the item's unit. */
  readonly packSize: Exact;
  readonly cost: number;
}

interface Share {
  readonly car: CarId | null;
  readonly by: Day | null;
  readonly orderBy: Day | null;
  readonly item: Key;
  readonly quantity: Exact;
}

export const weekSheets = (week: Week, answer: OrderAnswer): readonly WeekSheet[] => {
  const { problem, stepsOf } = week;
  const shares = sharesOf(week, answer);
  const offers = new Map(problem.offers.map((offer) => [offer.key, offer]));
  const { shipments: scores } = orderScore(problem, answer);
  return shipmentsOf(problem).flatMap(({ key, supplier, ordered, arrives }): readonly WeekSheet[] => {
    const bought = answer.packs.filter(({ shipment }) => shipment === key);
    if (bought.length === 0) return [];
    const items = [...new Set(bought.flatMap(({ offer }) => offers.get(offer)?.item ?? []))];
    const score = scores.find(({ shipment }) => shipment === key);
    const lines = items.map((item) => {
      const packs = bought.flatMap(({ offer, packs: count }) => {
        const found = offers.get(offer);
        return found?.item === item ? [packsOf(found, count, stepsOf)] : [];
      });
      return sheetLine(item, packs, shares.get(shareKey(key, item)) ?? [], arrives, week);
    });
    return [
      {
        shipment: key,
        supplier: supplier.key,
        ordered: dayFrom(ordered),
        arrives: dayFrom(arrives),
        goods: score?.goods ?? 0,
        freight: score?.freight ?? 0,
        lines,
      },
    ];
  });
};

const shareKey = (shipment: string, item: Key): string => JSON.stringify([shipment, item]);

const inUnits = (steps: number, item: Key, { stepsOf }: Pick<Week, 'stepsOf'>): Exact =>
  divide(exact(steps), exact(stepsOf.get(item) ?? 1)) ?? ZERO;

/** A pack of so many steps, at the price of that many packs. */
const packsOf = (offer: Offer, packs: number, stepsOf: Week['stepsOf']): Packs => ({
  offer: offer.key,
  supplier: offer.supplier,
  packs,
  packSize: inUnits(offer.packSize, offer.item, { stepsOf }),
  cost: (packPrice(offer, packs) ?? 0) * packs,
});

/** Who gets what of each order: the cars of a line in their order, as far as what it is given reaches. */
const sharesOf = (week: Week, { given }: OrderAnswer): ReadonlyMap<string, readonly Share[]> => {
  const shares = new Map<string, Share[]>();
  const put = (key: string, share: Share): void => {
    shares.set(key, [...(shares.get(key) ?? []), share]);
  };
  for (const item of new Set(week.groups.map((group) => group.item))) {
    const queue = week.groups.filter((group) => group.item === item).flatMap(wantsIn);
    const own = given.filter(({ line }) =>
      week.groups.some((group) => group.line === line && group.item === item),
    );
    // A day's share may be rounded up at another's cost: lines are walked as one, the earliest need first.
    for (const each of inOrder(own, week)) {
      let left = inUnits(each.quantity, item, week);
      for (let want = queue[0]; want !== undefined && compare(left, ZERO) > 0; want = queue[0]) {
        const taken = compare(want.quantity, left) <= 0 ? want.quantity : left;
        put(shareKey(each.shipment, each.item), { ...want, quantity: taken });
        left = subtract(left, taken);
        const rest = subtract(want.quantity, taken);
        if (compare(rest, ZERO) > 0) queue[0] = { ...want, quantity: rest };
        else queue.shift();
      }
    }
  }
  return shares;
};

const wantsIn = ({ item, by, orderBy, cars, quantity }: WeekGroup): readonly Share[] =>
  by === null
    ? [{ car: null, by, orderBy, item, quantity }]
    : cars.map((each) => ({ ...each, by, orderBy, item }));

const inOrder = (given: OrderAnswer['given'], { groups }: Week): OrderAnswer['given'] =>
  groups.flatMap(({ line }) => given.filter((each) => each.line === line));

const sheetLine = (
  item: Key,
  packs: readonly Packs[],
  shares: readonly Share[],
  arrives: number,
  week: Week,
): SheetLine => {
  const [by = null] = shares.flatMap((share) => share.by ?? []).sort();
  const bought = sum(packs.map(({ packs: count, packSize }) => inPacks(count, packSize)));
  const used = sum(shares.map(({ quantity }) => quantity));
  const shelf = sum(shares.filter(({ car }) => car === null).map(({ quantity }) => quantity));
  const cars = new Map<CarId, Exact>();
  for (const { car, quantity } of shares)
    if (car !== null) cars.set(car, add(cars.get(car) ?? ZERO, quantity));
  return {
    item,
    insteadOf: [...new Set(shares.map((share) => share.item))].filter((asked) => asked !== item),
    by,
    orderBy: shares.find((share) => share.by === by)?.orderBy ?? null,
    late: by === null ? 0 : Math.max(0, arrives - Date.parse(`${by}T00:00:00Z`) / 86_400_000),
    cars: [...cars].map(([car, quantity]) => ({ car, quantity })),
    shelf,
    spare: subtract(bought, used),
    packs,
    others: othersFor(item, used, packs, week),
    cost: packs.reduce((total, { cost }) => total + cost, 0),
  };
};

const sum = (values: readonly Exact[]): Exact => values.reduce(add, ZERO);
const inPacks = (count: number, size: Exact): Exact => exact(BigInt(count) * size.num, size.den);

const MOST_OTHERS = 2;

const othersFor = (item: Key, needed: Exact, chosen: readonly Packs[], week: Week): readonly Packs[] =>
  week.problem.offers
    .filter((offer) => offer.item === item)
    .flatMap((offer) => {
      const size = inUnits(offer.packSize, item, week);
      const ratio = divide(needed, size) ?? ZERO;
      const enough = Number((ratio.num + ratio.den - 1n) / ratio.den);
      const packs = Math.max(enough, offer.steps[0]?.fromPacks ?? 1);
      const isChosen = chosen.length === 1 && chosen[0]?.offer === offer.key;
      return isChosen ? [] : [packsOf(offer, packs, week.stepsOf)];
    })
    .sort((a, b) => a.cost - b.cost)
    .slice(0, MOST_OTHERS);
