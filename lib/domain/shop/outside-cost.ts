/** What work outside cost on one car: by what was billed for its parts, with their share of the way there and back. */
import { ZERO, add, exact } from '@/lib/domain/base/exact';
import { byValue } from '@/lib/domain/base/shares';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { OutsideWork } from './car-cost';
import type { TripRow } from './trip-rows';

/** Each part once for each trip. One that came back untouched and was not billed costs nothing; any other waits for its bill. */
export const outsideOf = (
  plan: CompiledPlan,
  car: Pick<Car, 'id' | 'components'>,
  trips: Readonly<Record<string, TripRow>>,
): readonly OutsideWork[] =>
  Object.entries(car.components).flatMap(([part, { outings }]) =>
    outings.flatMap(({ trip, work, back }, index): readonly OutsideWork[] => {
      if (outings.findIndex((each) => each.trip === trip) !== index) return [];
      const bills = trips[trip]?.bills ?? [];
      const lines = bills.flatMap((each) => each.lines);
      const shares = byValue(
        exact(bills.reduce((sum, { freight }) => sum + freight, 0)),
        lines.map(({ money }) => (money === 0 ? null : exact(money))),
      );
      const own = lines.flatMap((line, at) => (line.car === car.id && line.part === part ? [at] : []));
      if (own.length === 0 && back?.how === 'not-done') return [];
      const [fitter] = plan.fitters.get(part) ?? [];
      return [
        {
          part,
          stage: fitter?.stage ?? null,
          work,
          trip,
          money: own.length === 0 ? null : own.reduce((sum, at) => sum + (lines[at]?.money ?? 0), 0),
          freight: own.reduce((sum, at) => add(sum, shares[at] ?? ZERO), ZERO),
        },
      ];
    }),
  );
