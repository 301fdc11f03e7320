/** Operations for the forms, and the cautions that must be read before one begins. */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import { usedUpNow } from '@/lib/domain/decide/used-up';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { isCounted } from '@/lib/domain/shop/item';
import { inBox } from '@/lib/domain/shop/kit';
import { lotByLot, lotsAtHand } from '@/lib/domain/shop/lots-to-take';
import { quantityText } from '@/lib/domain/shop/need-words';
import { quantityOf, stockText } from '@/lib/domain/shop/stock';
import { lotChoices } from '@/lib/server/queries/sign-off/lot-choices';
import type { Stores } from '@/lib/server/queries/sign-off/lot-choices';
import type { ActRef, Desk, OperationThing, UsesUp } from '@/lib/wire/views/desk';
import type { Seen } from './seen';

export const operationThings = (
  seen: Seen,
  acts: readonly ActRef[],
  stores: Stores,
): Readonly<Record<StateKey, OperationThing>> => {
  const finished = new Set(acts.flatMap(({ type, key }) => (type === 'finish-operation' ? key : [])));
  const keys = new Set(acts.filter(({ kind }) => kind === 'operation').map(({ key }) => key));
  const found: Record<StateKey, OperationThing> = {};
  for (const key of keys) {
    const operation = seen.plan.operations.get(key);
    if (operation === undefined) continue;
    const row = seen.car.operations[key];
    found[key] = {
      name: seen.words.thing(key),
      run: row === undefined ? 1 : row.status === 'finished' ? row.run + 1 : row.run,
      crew: operation.crew,
      present: row?.present ?? [],
      cautions: operation.cautions,
      steps: seen.plan.document.operations?.[operation.key]?.steps ?? [],
      irreversible: operation.irreversible,
      ...usesOf(seen, operation, finished.has(key) ? stores : null),
    };
  }
  return found;
};

/** What the finish will use up and must name a lot of. */
const usesOf = (
  seen: Seen,
  operation: CompiledOperation,
  stores: Stores | null,
): Pick<OperationThing, 'uses'> => {
  if (stores === null) return {};
  const { plan, car } = seen;
  const items = plan.document.items ?? {};
  const box = inBox(car, operation.stateKey);
  const uses = usedUpNow(plan, car, operation)
    .filter(({ item }) => items[item]?.trace === 'lot')
    .map(({ item, quantity }): UsesUp => {
      const unit = items[item]?.unit ?? 'pc';
      const { taken } = lotByLot(lotsAtHand(box, stores.shelf, item, seen.at.car.id), quantityOf(quantity));
      const isAll = taken.length === 1;
      return {
        item,
        name: items[item]?.name ?? item,
        quantity: `${quantityText(quantityOf(quantity), unit)}${isCounted(unit) ? ' ×' : ''}`,
        proposed: taken.flatMap((part) =>
          part.lot === null
            ? []
            : [{ item, lot: part.lot, ...(isAll ? {} : { quantity: stockText(part.quantity) }) }],
        ),
        lots: lotChoices(seen.at, stores, box, item, seen.spoken),
      };
    });
  return uses.length === 0 ? {} : { uses };
};

export const cautionThings = (
  seen: Seen,
  operations: Readonly<Record<StateKey, OperationThing>>,
): Desk['cautions'] => {
  const keys = new Set<Key>(Object.values(operations).flatMap(({ cautions }) => cautions));
  const entries = seen.plan.document.cautions ?? {};
  return Object.fromEntries(
    [...keys].flatMap((key) => {
      const entry = entries[key];
      return entry === undefined ? [] : [[key, { hazard: entry.hazard, text: entry.text }] as const];
    }),
  );
};
