/** Operations of the effective plan, one for each position. */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { PlanIndex } from './compile-references';
import type { CompiledOperation, Requirement } from './compiled';
import type { OperationEntry } from './document';
import { parseDuration } from './notation';
import { positionsOf, stateKey } from './positions';
import { checkClear, jointAtLevel } from './requirements';

/** What `before:` and `covers:` add to an operation's own needs. */
type Added = ReadonlyMap<Key, readonly Requirement[]>;

export const compileOperations = (index: PlanIndex): Map<StateKey, CompiledOperation> => {
  const added = neededBefore(index);
  const found = new Map<StateKey, CompiledOperation>();
  for (const [key, entry] of Object.entries(index.document.operations ?? {})) {
    const is = index.appliesTo('operations', key);
    if ('on' in is && !is.on) continue;
    const undecided = 'undecided' in is ? is.undecided : [];
    for (const position of positionsOf(entry.repeat)) {
      const operation = compileOperation(index, key, entry, position, added.get(key) ?? []);
      found.set(operation.stateKey, { ...operation, undecided });
    }
  }
  return found;
};

const compileOperation = (
  index: PlanIndex,
  key: Key,
  entry: OperationEntry,
  position: string | null,
  added: readonly Requirement[],
): CompiledOperation => {
  const stage = index.stageIndex.get(entry.stage) ?? 0;
  const body = index.body(entry.body ?? [], entry.repeat, position);
  return {
    key,
    stateKey: stateKey(key, position),
    name: entry.name,
    undecided: [],
    due: index.stageIndex.get(entry.due ?? entry.stage) ?? stage,
    stage,
    notBefore: entry.notBefore ?? index.document.stages[entry.stage]?.notBefore ?? false,
    who: entry.who ?? null,
    minutes: entry.minutes ?? 0,
    crew: entry.crew ?? 1,
    needs: [
      ...index.needs(entry.needs ?? [], entry.repeat, position),
      ...coveredBy(index, entry, position),
      ...added,
    ],
    body,
    parts: body.flatMap((line) => (line.verb === 'fit' ? [line.part] : [])),
    waitMs: entry.wait === undefined ? 0 : (parseDuration(entry.wait) ?? 0),
    irreversible: entry.irreversible ?? false,
    madeOn: entry.madeOn ?? null,
    redo: entry.redo ?? false,
    repeatable: entry.repeatable ?? false,
    cautions: entry.cautions ?? [],
  };
};

/** The level at which a joint is due: verified where it is critical or the plan names how, else final. */
export const dueLevelOf = (joint: {
  readonly critical?: boolean;
  readonly verify?: unknown;
  readonly dueLevel?: 'snug' | 'final' | 'verified';
}): 'snug' | 'final' | 'verified' =>
  joint.dueLevel ?? (joint.critical === true || joint.verify !== undefined ? 'verified' : 'final');

/** Nobody can see a covered joint again: it must be at its due level first. */
const coveredBy = (
  index: PlanIndex,
  entry: OperationEntry,
  position: string | null,
): readonly Requirement[] =>
  (entry.covers ?? []).flatMap((text) =>
    index.targets(text, 'joints', entry.repeat, position).map((joint): Requirement => {
      const covered = index.document.joints?.[joint.split('@')[0] ?? joint];
      return jointAtLevel(joint, dueLevelOf(covered ?? {}));
    }),
  );

const neededBefore = (index: PlanIndex): Added => {
  const found = new Map<Key, Requirement[]>();
  const add = (operation: Key, requirement: Requirement): void => {
    found.set(operation, [...(found.get(operation) ?? []), requirement]);
  };
  for (const [key, joint] of Object.entries(index.document.joints ?? {})) {
    if (joint.before === undefined) continue;
    for (const target of index.targets(`${key}@*`, 'joints', undefined, null))
      add(joint.before, jointAtLevel(target, dueLevelOf(joint)));
  }
  for (const [key, check] of Object.entries(index.document.checks ?? {})) {
    if (check.before === undefined) continue;
    for (const target of index.targets(`${key}@*`, 'checks', undefined, null))
      add(check.before, checkClear(target));
  }
  return found;
};
