/** Reads what must be bought for all cars together, and why. */
import 'server-only';
import { ZERO, add, compare, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import { needNow } from '@/lib/server/load/need';
import type { DemandLine } from '@/lib/domain/shop/demand';
import { isCounted } from '@/lib/domain/shop/item';
import { RECKONED, coveredWords, quantityText, reasonPieces } from '@/lib/domain/shop/need-words';
import type { NeedNames } from '@/lib/domain/shop/need-words';
import type { Database } from '@/lib/server/database';
import type { HardwareCar, HardwareItem, HardwareView } from '@/lib/wire/views/hardware';
import { withTimes } from '@/lib/wire/views/when';
import { counted } from './board/words';

/** `all`: what is covered as well; else only what is short. */
export const hardwareView = async (db: Database, all: boolean, now: string): Promise<HardwareView> => {
  const { demand, held, floor, names, today, zone } = await needNow(db, now);
  const shown: Shown = {
    cars: floor.map(tagOf),
    names,
    today,
    held,
    spoken: withTimes(zone, today),
  };
  const needed = demand.filter(
    (line) => isShort(line) || compare(line.need, ZERO) > 0 || line.undecided.length > 0,
  );
  const short = needed.filter(isShort);
  return {
    says: saysOf(floor.length, short.length, needed.length),
    cars: shown.cars,
    items: (all ? needed : short).toSorted(earlier(names)).map((line) => itemOf(line, shown)),
    basis: RECKONED,
    counts: { short: short.length, all: needed.length },
  };
};

interface Shown {
  readonly cars: readonly HardwareCar[];
  readonly names: NeedNames;
  readonly today: string;
  readonly held: ReadonlyMap<Key, Exact>;
  readonly spoken: (sentence: string) => string;
}

const tagOf = ({ id, chassis, colour }: Car): HardwareCar => ({ id, chassis, colour });

const isShort = ({ buy }: DemandLine): boolean => compare(buy, ZERO) > 0;

/** What is short first, soonest first; then by name. */
const earlier =
  (names: NeedNames) =>
  (a: DemandLine, b: DemandLine): number => {
    const day = ({ by }: DemandLine): string => by ?? '9999';
    return (
      Number(isShort(b)) - Number(isShort(a)) ||
      day(a).localeCompare(day(b)) ||
      (names.item(a.item) ?? a.item).localeCompare(names.item(b.item) ?? b.item, 'en')
    );
  };

const saysOf = (cars: number, short: number, all: number): string => {
  if (cars === 0) return 'No car stands on the floor, so nothing is needed.';
  const what = `What ${counted(cars, 'car').toLowerCase()} still ${cars === 1 ? 'needs' : 'need'}`;
  if (short === 0) return `${what} is all on the shelf.`;
  return `${what} and the shelf does not cover: ${String(short)} of ${String(all)} items.`;
};

/** Behind the key: `in m` of what is measured, `kit` of what is counted in something else than pieces. */
export const unitWords = (unit: string): string =>
  unit === 'pc' ? '' : isCounted(unit) ? unit : `in ${unit}`;

const sumOf = (lines: readonly { readonly quantity: Exact }[]): Exact =>
  lines.reduce((sum, { quantity }) => add(sum, quantity), ZERO);

const itemOf = (line: DemandLine, shown: Shown): HardwareItem => {
  const { item, unit, need, lines, minimum, buy, by, allocations, left, undecided } = line;
  const { names, today, spoken } = shown;
  const text = (quantity: Exact): string => quantityText(quantity, unit);
  const ofCar = (id: CarId): Exact => sumOf(lines.filter(({ car }) => car === id));
  const given = sumOf(allocations);
  const held = shown.held.get(item);
  const tags = new Map(shown.cars.map((car) => [car.id, car]));
  return {
    key: item,
    name: names.item(item) ?? item,
    unit: unitWords(unit),
    perCar: shown.cars.map(({ id }) => {
      const quantity = ofCar(id);
      return compare(quantity, ZERO) === 0 ? '' : text(quantity);
    }),
    minimum: compare(minimum, ZERO) > 0 ? text(minimum) : '',
    need: text(need),
    shelf: text(add(given, left)),
    covered: compare(need, ZERO) > 0 ? Math.min(1, toNumber(given) / toNumber(need)) : 0,
    held: held === undefined ? null : text(held),
    buy: isShort(line) ? text(buy) : null,
    by: by === null ? null : { text: names.day(by), isToday: by === today },
    reasons: reasonPieces(line, names).flatMap(({ car, place, cause, ...reason }) => {
      const tag = tags.get(car);
      if (tag === undefined) return [];
      return [{ ...reason, car: tag, place: place === null ? null : spoken(place), cause: spoken(cause) }];
    }),
    from: coveredWords(allocations, unit, names),
    waitsFor: [
      ...new Set(
        undecided.flatMap(({ car, undecided: options }) =>
          options.map((option) => `${names.thing(car, option) ?? option} of ${names.car(car)}`),
        ),
      ),
    ],
  };
};
