/** What work outside cost on one car: by what was billed, with its share of the way there and back. */
import { ZERO, add, exact } from '@/lib/domain/base/exact';
import { byValue } from '@/lib/domain/base/shares';
import type { CarId, StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledOperation, CompiledPlan } from '@/lib/domain/plan/compiled';
import type { OutsideWork } from './car-cost';
import { isOutside } from './outside-quotes';
import type { TripRow } from './trip-rows';

type Trips = Readonly<Record<string, TripRow>>;

/** The car's parts that went, and what was done elsewhere on the car itself. */
export const outsideOf = (
  plan: CompiledPlan,
  car: Pick<Car, 'id' | 'components'>,
  trips: Trips,
): readonly OutsideWork[] => [...partsOf(plan, car, trips), ...worksOf(plan, car, trips)];

/** Each part once for each trip. One that came back untouched and was not billed costs nothing; any other waits for its bill. */
const partsOf = (
  plan: CompiledPlan,
  car: Pick<Car, 'id' | 'components'>,
  trips: Trips,
): readonly OutsideWork[] =>
  Object.entries(car.components).flatMap(([part, { outings }]) =>
    outings.flatMap(({ trip, work, back }, index): readonly OutsideWork[] => {
      if (outings.findIndex((each) => each.trip === trip) !== index) return [];
      const billed = billedFor(trips[trip], car.id, part);
      if (billed === null && back?.how === 'not-done') return [];
      const [fitter] = plan.fitters.get(part) ?? [];
      return [{ part, stage: fitter?.stage ?? null, work, trip, ...(billed ?? UNBILLED) }];
    }),
  );

/** Work goes to no trip and comes back from none: it is known by its bill. */
const worksOf = (plan: CompiledPlan, car: Pick<Car, 'id'>, trips: Trips): readonly OutsideWork[] =>
  Object.values(trips).flatMap((trip) =>
    sentWork(plan).flatMap(({ stateKey, stage, name }): readonly OutsideWork[] => {
      const billed = billedFor(trip, car.id, stateKey);
      return billed === null ? [] : [{ part: stateKey, stage, work: name, trip: trip.id, ...billed }];
    }),
  );

/** Work of the plan that is done by another firm. */
export const sentWork = (plan: CompiledPlan): readonly CompiledOperation[] =>
  plan.all.operations.filter(({ key }) => isOutside(plan.document, key));

const UNBILLED = { money: null, freight: ZERO };

/** With its share of the way there and back, by value over all lines of the trip; null = it is on no bill. */
const billedFor = (
  trip: TripRow | undefined,
  car: CarId,
  part: StateKey,
): Pick<OutsideWork, 'money' | 'freight'> | null => {
  const bills = trip?.bills ?? [];
  const lines = bills.flatMap((each) => each.lines);
  const own = lines.flatMap((line, at) => (line.car === car && line.part === part ? [at] : []));
  if (own.length === 0) return null;
  const shares = byValue(
    exact(bills.reduce((sum, { freight }) => sum + freight, 0)),
    lines.map(({ money }) => (money === 0 ? null : exact(money))),
  );
  return {
    money: own.reduce((sum, at) => sum + (lines[at]?.money ?? 0), 0),
    freight: own.reduce((sum, at) => add(sum, shares[at] ?? ZERO), ZERO),
  };
};
