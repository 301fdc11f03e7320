/** Operations for the forms, and the cautions that must be read before one begins. */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { ActRef, Desk, OperationThing } from '@/lib/wire/views/desk';
import type { Seen } from './seen';

export const operationThings = (
  seen: Seen,
  acts: readonly ActRef[],
): Readonly<Record<StateKey, OperationThing>> => {
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
    };
  }
  return found;
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
