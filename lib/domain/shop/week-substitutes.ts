/**
 * What may come in place of an item, for all joints that wait for it: only what the plan names, without a lead's word, and
 * only where thread, grade, kind and length that are known don't speak against it. What nobody has measured stays the
 * plan's own condition, which the order shows.
 */
import type { CarId, Day, Key } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planKey } from '@/lib/domain/plan/positions';
import type { DemandLine } from './demand';
import type { Wanted } from './supply';
import { isCounted } from './item';
import { judgeSubstitute } from './substitute';
import type { Catalogue } from './item';

type PlanOf = (car: CarId) => PlanDocument | null;

interface Waiting {
  readonly item: Key;
  readonly by: Day | null;
  readonly cars: readonly Pick<Wanted, 'car'>[];
}

export const substitutesFor = (
  { item, by, cars }: Waiting,
  demand: DemandLine,
  { catalogue, planOf }: { readonly catalogue: Catalogue; readonly planOf: PlanOf },
): readonly Key[] => {
  const asked = catalogue[item];
  // A metre of one hose is no metre of another; and the shelf is filled with what it is a shelf of.
  if (asked === undefined || by === null || !isCounted(asked.unit)) return [];
  const waiting = demand.lines.filter(
    (line) => line.by.day === by && cars.some(({ car }) => car === line.car),
  );
  const [first] = waiting;
  const named = Object.keys((first && planOf(first.car)?.items?.[item]?.substitutes) ?? {});
  return named.filter((instead) => {
    const offered = catalogue[instead];
    return (
      offered?.unit === asked.unit &&
      waiting.every((line) => {
        const document = planOf(line.car);
        const joint = planKey(line.at);
        const { refusals } = judgeSubstitute(asked, offered, {
          joint,
          critical: document?.joints?.[joint]?.critical ?? false,
          entry: document?.items?.[item]?.substitutes?.[instead],
          isLead: false,
          stack: null,
          bolt: null,
          room: null,
          lockWasher: null,
          offeredNut: null,
        });
        return refusals.every(({ code }) => code === 'not-measured');
      })
    );
  });
};

/** The plan's own words for it, where it has any. */
export const substituteCondition = (
  item: Key,
  instead: Key,
  documents: readonly PlanDocument[],
): string | null =>
  documents.flatMap((document) => document.items?.[item]?.substitutes?.[instead]?.condition ?? [])[0] ?? null;
