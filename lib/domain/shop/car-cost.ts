/**
 * What a car cost so far and what its plan will cost, by stage: material at what its lots cost, freight by value, hours at the
 * rate of their day, work outside; scrap apart. Sums are exact and are rounded once, from the whole down to its lines, so that
 * whatever is shown adds up. What has no price is counted and named, never taken as nothing.
 */
import { ZERO, add, compare, exact, multiply } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { inWholes, nearestWhole, sumOf } from '@/lib/domain/base/shares';
import type { Day, Instant, Key, LotId, StateKey } from '@/lib/domain/base/vocabulary';
import type { PlannedOutside } from './outside-quotes';
import { rateOn } from './rates';
import type { HourRates } from './rates';
import type { PriceBasis, PriceOf } from './unit-price';

/** Why something went that the plan does not ask for. */
export const SCRAP_REASONS = ['renewed', 'again', 'damaged', 'extra-taken', 'scrapped', 'lost'] as const;
export type ScrapReason = (typeof SCRAP_REASONS)[number];

/** What went from one place into the car, or was lost over it. `stage` is its place in the plan; null = no stage of it. */
export interface Drawing {
  readonly item: Key;
  readonly lot: LotId | null;
  readonly quantity: Exact;
  readonly stage: number | null;
  readonly at: Instant;
  /** The joint, the work or the part that it went for. */
  readonly for: StateKey | null;
  readonly scrap: ScrapReason | null;
}

export interface WorkedHours {
  readonly stage: number | null;
  readonly milliseconds: number;
  /** The day on which that stretch began: its rate holds for all of it. */
  readonly day: Day;
}

/** One part at work in another firm. `money` null = not billed yet; `freight`: its share of the trip's (see `byValue`). */
export interface OutsideWork {
  readonly part: Key;
  readonly stage: number | null;
  readonly work: string;
  readonly trip: string;
  readonly money: number | null;
  readonly freight: Exact;
}

export interface PlannedMaterial {
  readonly item: Key;
  readonly quantity: Exact;
  readonly stage: number | null;
}

export interface CostInput {
  readonly stages: number;
  readonly drawings: readonly Drawing[];
  readonly worked: readonly WorkedHours[];
  readonly outside: readonly OutsideWork[];
  readonly planned: {
    readonly materials: readonly PlannedMaterial[];
    readonly minutes: readonly { readonly stage: number; readonly minutes: number }[];
    readonly outside: readonly PlannedOutside[];
  };
  readonly priceOf: PriceOf;
  readonly rates: HourRates;
  readonly today: Day;
}

export const COST_KINDS = ['material', 'hours', 'outside', 'freight'] as const;
export type CostKind = (typeof COST_KINDS)[number];

/** In the smallest unit of money. */
export type Figures = Readonly<Record<CostKind | 'total', number>>;

export interface StageCost {
  /** Null: what belongs to no stage of the plan. */
  readonly stage: number | null;
  readonly soFar: Figures;
  readonly planned: Figures;
  /** Whole minutes of work. */
  readonly minutes: { readonly soFar: number; readonly planned: number };
}

export interface MaterialLine {
  readonly item: Key;
  readonly basis: PriceBasis;
  readonly quantity: Exact;
  readonly money: number;
}

export interface ScrapLine extends Drawing {
  /** Freight in; null = no price known. */
  readonly money: number | null;
}

export interface Unpriced {
  readonly item: Key;
  readonly soFar: Exact;
  readonly planned: Exact;
}

export interface CarCost {
  readonly stages: readonly StageCost[];
  /** The stages together; `total` with the scrap. */
  readonly soFar: Figures;
  readonly planned: Figures;
  readonly scrap: number;
  readonly total: number;
  /** What the material so far is made of, the dearest first. */
  readonly materials: readonly MaterialLine[];
  readonly scrapped: readonly ScrapLine[];
  readonly unpriced: {
    readonly items: readonly Unpriced[];
    /** Minutes of days that no rate was said for. */
    readonly minutes: { readonly soFar: number; readonly planned: number };
    readonly outside: readonly OutsideWork[];
    readonly plannedOutside: readonly PlannedOutside[];
  };
}

/** One amount before it is rounded. */
interface Amount {
  readonly stage: number | null;
  readonly kind: CostKind;
  readonly money: Exact;
}

export const carCost = (input: CostInput): CarCost => {
  const { planned, priceOf } = input;
  const scrap = input.drawings.filter((each) => each.scrap !== null);
  const kept = input.drawings.filter((each) => each.scrap === null);
  const missing = new Map<Key, { soFar: Exact; planned: Exact }>();
  const miss = (item: Key, side: 'soFar' | 'planned', quantity: Exact): void => {
    const before = missing.get(item) ?? { soFar: ZERO, planned: ZERO };
    missing.set(item, { ...before, [side]: add(before[side], quantity) });
  };

  const materials = new Map<string, { item: Key; basis: PriceBasis; quantity: Exact; money: Exact }>();
  const soFar: Amount[] = kept.flatMap(({ item, lot, quantity, stage, at }): readonly Amount[] => {
    const price = priceOf(item, lot, at);
    if (price === null) {
      miss(item, 'soFar', quantity);
      return [];
    }
    const money = multiply(quantity, price.goods);
    const key = `${item}|${price.basis}`;
    const before = materials.get(key) ?? { item, basis: price.basis, quantity: ZERO, money: ZERO };
    materials.set(key, {
      ...before,
      quantity: add(before.quantity, quantity),
      money: add(before.money, money),
    });
    return [
      { stage, kind: 'material', money },
      { stage, kind: 'freight', money: multiply(quantity, price.freight) },
    ];
  });
  const wasted = scrap.map((each) => {
    const price = priceOf(each.item, each.lot, each.at);
    if (price === null) miss(each.item, 'soFar', each.quantity);
    return price === null ? null : multiply(each.quantity, add(price.goods, price.freight));
  });
  const hours = hoursCost(input);
  soFar.push(...hours.soFar, ...outsideCost(input.outside));

  const ahead: Amount[] = planned.materials.flatMap(({ item, quantity, stage }): readonly Amount[] => {
    const price = priceOf(item, null, null);
    if (price === null) {
      miss(item, 'planned', quantity);
      return [];
    }
    return [
      { stage, kind: 'material', money: multiply(quantity, price.goods) },
      { stage, kind: 'freight', money: multiply(quantity, price.freight) },
    ];
  });
  ahead.push(
    ...hours.planned,
    ...planned.outside.flatMap(({ stage, money }) =>
      money === null ? [] : [{ stage, kind: 'outside', money: exact(money) } as const],
    ),
  );

  const places: readonly (number | null)[] = [...Array.from({ length: input.stages }, (_, at) => at), null];
  const lost = wasted.map((each) => each ?? ZERO);
  const now = rounded(places, soFar, sumOf(lost));
  const then = rounded(places, ahead, ZERO);
  const lostMoney = inWholes(now.apart, lost);
  const stages = places.map((stage, index): StageCost => {
    const none = { material: 0, hours: 0, outside: 0, freight: 0, total: 0 };
    return {
      stage,
      soFar: now.rows[index] ?? none,
      planned: then.rows[index] ?? none,
      minutes: {
        soFar: wholeMinutes(
          input.worked
            .filter((each) => each.stage === stage)
            .reduce((sum, each) => sum + each.milliseconds, 0),
        ),
        planned: planned.minutes
          .filter((each) => each.stage === stage)
          .reduce((sum, { minutes }) => sum + minutes, 0),
      },
    };
  });
  return {
    stages: stages.filter(
      (each) =>
        each.stage !== null ||
        each.soFar.total !== 0 ||
        each.planned.total !== 0 ||
        each.minutes.soFar + each.minutes.planned > 0,
    ),
    soFar: now.sums,
    planned: then.sums,
    scrap: now.apart,
    total: now.sums.total + now.apart,
    materials: materialLines([...materials.values()], now.sums.material),
    scrapped: scrap.map((each, index) => ({
      ...each,
      money: wasted[index] === null ? null : (lostMoney[index] ?? 0),
    })),
    unpriced: {
      items: [...missing].map(([item, sums]) => ({ item, ...sums })),
      minutes: hours.unpriced,
      outside: input.outside.filter(({ money }) => money === null),
      plannedOutside: planned.outside.filter(({ money }) => money === null),
    },
  };
};

const wholeMinutes = (milliseconds: number): number => Math.floor(milliseconds / 60_000);
const AN_HOUR = 3_600_000n;

const hoursCost = ({ worked, planned, rates, today }: CostInput) => {
  const soFar: Amount[] = [];
  let unsaid = 0;
  for (const { stage, milliseconds, day } of worked) {
    const rate = rateOn(rates, day);
    if (rate === null) unsaid += milliseconds;
    else soFar.push({ stage, kind: 'hours', money: multiply(rate, exact(BigInt(milliseconds), AN_HOUR)) });
  }
  const rate = rateOn(rates, today);
  const ahead: Amount[] =
    rate === null
      ? []
      : planned.minutes.map(({ stage, minutes }) => ({
          stage,
          kind: 'hours',
          money: multiply(rate, exact(minutes, 60)),
        }));
  const all = planned.minutes.reduce((sum, { minutes }) => sum + minutes, 0);
  return {
    soFar,
    planned: ahead,
    unpriced: { soFar: wholeMinutes(unsaid), planned: rate === null ? all : 0 },
  };
};

const outsideCost = (outside: readonly OutsideWork[]): readonly Amount[] =>
  outside.flatMap(({ stage, money, freight }): readonly Amount[] => [
    ...(money === null ? [] : [{ stage, kind: 'outside', money: exact(money) } as const]),
    { stage, kind: 'freight', money: freight },
  ]);

/** The whole first, then its kinds with what stands apart, then each kind's stages: every sum is that of its lines. */
const rounded = (places: readonly (number | null)[], amounts: readonly Amount[], apart: Exact) => {
  const of = (kind: CostKind): readonly Amount[] => amounts.filter((each) => each.kind === kind);
  const kinds = [...COST_KINDS.map((kind) => sumOf(of(kind).map(({ money }) => money))), apart];
  const whole = inWholes(nearestWhole(sumOf(kinds)), kinds);
  const cells = COST_KINDS.map((kind, index) =>
    inWholes(
      whole[index] ?? 0,
      places.map((stage) => sumOf(of(kind).flatMap((each) => (each.stage === stage ? [each.money] : [])))),
    ),
  );
  const figures = (at: (index: number) => number): Figures => {
    const [material = 0, hours = 0, outside = 0, freight = 0] = COST_KINDS.map((_, index) => at(index));
    return { material, hours, outside, freight, total: material + hours + outside + freight };
  };
  return {
    rows: places.map((_, row) => figures((kind) => cells[kind]?.[row] ?? 0)),
    sums: figures((kind) => whole[kind] ?? 0),
    apart: whole[COST_KINDS.length] ?? 0,
  };
};

const materialLines = (
  lines: readonly { readonly item: Key; readonly basis: PriceBasis; quantity: Exact; money: Exact }[],
  sum: number,
): readonly MaterialLine[] => {
  const sorted = lines.toSorted((a, b) => compare(b.money, a.money) || (a.item < b.item ? -1 : 1));
  const money = inWholes(
    sum,
    sorted.map((each) => each.money),
  );
  return sorted.map((line, index) => ({ ...line, money: money[index] ?? 0 }));
};
