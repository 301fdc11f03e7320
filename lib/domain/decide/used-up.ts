/** What finishing a piece of work takes beside the hardware of its joints, and from which lots. */
import { ZERO, compare, subtract } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import { lotRefusals } from '@/lib/domain/car/hardware';
import type { UsedLot } from '@/lib/domain/commands';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledOperation, CompiledPlan } from '@/lib/domain/plan/compiled';
import { inBox } from '@/lib/domain/shop/kit';
import { operationNeed } from '@/lib/domain/shop/need-work';
import { drawnOf, quantityOf } from '@/lib/domain/shop/stock';
import type { Drawn } from '@/lib/domain/shop/stock';
import { lotFactsOf } from './case';
import type { Case } from './case';
import { lotRefusalsOf, namedByBox, unreadable } from './kits';

/** By item, what the finish will take: nothing where it was finished, struck, and is signed again, since that is gone already. */
export const usedUpNow = (plan: CompiledPlan, car: Car, operation: CompiledOperation): readonly Drawn[] =>
  wasFinished(car, operation.stateKey)
    ? []
    : drawnOf(
        operationNeed(plan, car, operation).map(({ item, quantity }) => ({ item, lot: null, quantity })),
      );

const wasFinished = (car: Car, key: StateKey): boolean =>
  Object.values(car.signatures).some(
    ({ act, subject, number }) =>
      act === 'finish-operation' && subject === key && number === car.operations[key]?.run,
  );

/** What is taken, by lot where one was named or the box leaves no doubt, and what stands against it. */
export const usedUp = (
  at: Case,
  operation: CompiledOperation,
  lots: readonly UsedLot[],
): { readonly drawn: readonly Drawn[]; readonly refusals: readonly Refusal[] } => {
  const wanted = usedUpNow(at.plan, at.car, operation);
  const box = inBox(at.car, operation.stateKey);
  const said = lots.map(({ item }) => item);
  const byBox = namedByBox(
    box,
    wanted.filter(({ item }) => !said.includes(item)),
  );
  const byWord = wanted.filter(({ item }) => said.includes(item)).flatMap((line) => split(line, lots));
  return {
    drawn: drawnOf([...byBox, ...byWord].map((each) => ({ ...each, quantity: quantityOf(each.quantity) }))),
    refusals: [
      ...lots.flatMap((named): readonly Refusal[] => [
        ...(wanted.some(({ item }) => item === named.item)
          ? []
          : [refuse('unknown-thing', { what: 'item that this work uses up', key: named.item })]),
        ...(named.quantity === undefined ? [] : unreadable({ item: named.item, quantity: named.quantity })),
        ...lotRefusals(named.item, named.lot, lotFactsOf(at)),
      ]),
      ...lotRefusalsOf(at, byBox),
    ],
  };
};

/** One item by its lots, as they were named; what none of them is said to have given goes with no lot. */
const split = ({ item, quantity }: Drawn, lots: readonly UsedLot[]): readonly Drawn[] => {
  let open = quantityOf(quantity);
  const parts = lots
    .filter((named) => named.item === item)
    .map((named) => {
      const said = named.quantity === undefined ? open : quantityOf(named.quantity);
      const part = compare(said, open) < 0 ? said : open;
      open = subtract(open, part);
      return { item, lot: named.lot, quantity: part };
    });
  return drawnOf(compare(open, ZERO) > 0 ? [...parts, { item, lot: null, quantity: open }] : parts);
};
