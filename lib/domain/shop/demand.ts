/**
 * What must be bought: the need of all cars together, item by item, with the shop's minimum stock, less what is there and what
 * is coming. Every line keeps the lines that it is made of.
 */
import { ZERO, add, compare, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Key } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { isForUsed, reuseOf } from '@/lib/domain/plan/reuse';
import { roundedUp } from './item';
import type { Catalogue } from './item';
import type { CarNeed } from './need';
import { needBy } from './need-days';
import type { NeedBy, Reckoning } from './need-days';
import type { NeedLine } from './need-line';
import { allocate } from './supply';
import type { Allocation, Supply, Wanted } from './supply';

export interface DatedLine extends NeedLine {
  readonly by: NeedBy;
}

export interface CarsNeed {
  readonly plan: CompiledPlan;
  readonly car: Car;
  readonly need: CarNeed;
}

export interface DemandLine {
  readonly item: Key;
  readonly what: NeedLine['what'];
  readonly unit: string;
  /** Of all cars; the sum of `lines`. */
  readonly need: Exact;
  /** Earliest first. */
  readonly lines: readonly DatedLine[];
  /** Not counted: waits for a choice. */
  readonly undecided: readonly NeedLine[];
  readonly allocations: readonly Allocation[];
  /** What no stock and no order covers, by car. */
  readonly short: readonly Wanted[];
  readonly minimum: Exact;
  /** What would be left on the shelf. */
  readonly left: Exact;
  /** Need that is not covered, and what the minimum lacks; exact. */
  readonly demand: Exact;
  /** The demand in whole pieces, where the item is counted. */
  readonly buy: Exact;
  /** The first day on which something is short; null where only the minimum is, or nothing. */
  readonly by: Day | null;
}

/** One line for each item that is needed, or of which there is too little: in the order of the items’ keys. */
export const demandOf = (
  cars: readonly CarsNeed[],
  supply: readonly Supply[],
  catalogue: Catalogue,
  at: Reckoning,
): readonly DemandLine[] => {
  const dated = cars.flatMap(({ plan, car, need }) =>
    need.lines.map((line): DatedLine => ({ ...line, by: needBy(plan, car, line.before, at) })),
  );
  const byItem = grouped(dated);
  const undecided = grouped(cars.flatMap(({ need }) => need.undecided));
  const supplies = grouped(supply);
  const minimums = Object.values(catalogue).filter(({ minimum }) => compare(minimum, ZERO) > 0);
  const builds = new Map(cars.map(({ car, plan }) => [car.id, plan.document]));
  const keys = new Set([...byItem.keys(), ...undecided.keys(), ...minimums.map(({ key }) => key)]);
  return [...keys]
    .sort()
    .map((item) =>
      demandLine(
        item,
        byItem.get(item) ?? [],
        undecided.get(item) ?? [],
        supplies.get(item) ?? [],
        catalogue,
        builds,
      ),
    );
};

const grouped = <Line extends { readonly item: Key }>(lines: readonly Line[]): ReadonlyMap<Key, Line[]> =>
  groupedBy(lines, ({ item }) => item);

const groupedBy = <Line>(lines: readonly Line[], by: (line: Line) => string): ReadonlyMap<string, Line[]> => {
  const found = new Map<string, Line[]>();
  for (const line of lines) {
    const list = found.get(by(line));
    if (list === undefined) found.set(by(line), [line]);
    else list.push(line);
  }
  return found;
};

const total = (lines: readonly { readonly quantity: Exact }[]): Exact =>
  lines.reduce((sum, { quantity }) => add(sum, quantity), ZERO);

const demandLine = (
  item: Key,
  lines: readonly DatedLine[],
  undecided: readonly NeedLine[],
  supply: readonly Supply[],
  catalogue: Catalogue,
  builds: ReadonlyMap<CarId, PlanDocument>,
): DemandLine => {
  const entry = catalogue[item];
  const unit = entry?.unit ?? 'pc';
  const minimum = entry?.minimum ?? ZERO;
  const wanted = wantedBy(lines);
  const hasUsed = supply.some(({ source }) => source.kind === 'donor');
  const { allocations, unmet, left } = allocate(
    hasUsed ? wanted.map((each) => newWhereAsked(each, item, builds)) : wanted,
    supply,
  );
  const lacking = subtract(minimum, left);
  const demand = add(total(unmet), compare(lacking, ZERO) > 0 ? lacking : ZERO);
  return {
    item,
    what: lines[0]?.what ?? undecided[0]?.what ?? 'item',
    unit,
    need: total(lines),
    lines: [...lines].sort((a, b) => (a.by.day < b.by.day ? -1 : a.by.day > b.by.day ? 1 : 0)),
    undecided,
    allocations,
    short: unmet,
    minimum,
    left,
    demand,
    buy: roundedUp(demand, unit),
    by: unmet[0]?.by ?? null,
  };
};

/** Where the car's plan uses the item once, what came off a donor covers none of it. */
const newWhereAsked = (wanted: Wanted, item: Key, builds: ReadonlyMap<CarId, PlanDocument>): Wanted =>
  isForUsed(reuseOf(builds.get(wanted.car)?.items, item)) ? wanted : { ...wanted, mustBeNew: true };

/** By car and day; what lies in a box is taken off the car's own needs, the earliest first. */
const wantedBy = (lines: readonly DatedLine[]): readonly Wanted[] => {
  return [...groupedBy(lines, ({ car }): CarId => car)].flatMap(([car, own]) => {
    const days = new Map<Day, Exact>();
    const [plus, minus] = [own.filter(isPlus), own.filter((line) => !isPlus(line))];
    for (const { by, quantity } of plus) days.set(by.day, add(days.get(by.day) ?? ZERO, quantity));
    let covered = subtract(ZERO, total(minus));
    return [...days]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([by, quantity]): readonly Wanted[] => {
        const taken = compare(covered, quantity) < 0 ? covered : quantity;
        covered = subtract(covered, taken);
        const open = subtract(quantity, taken);
        return compare(open, ZERO) > 0 ? [{ car, by, quantity: open }] : [];
      });
  });
};

const isPlus = ({ quantity }: DatedLine): boolean => compare(quantity, ZERO) >= 0;
