/**
 * document + chosen options → the effective plan that every rule takes. Compiled once and kept for as long
 * as the document is: the document is frozen, so its identity and the options are the whole key.
 */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import { compileChecks, compileJoints } from './compile-joints';
import { compileOperations } from './compile-operations';
import { planIndex } from './compile-references';
import type { PlanIndex } from './compile-references';
import type {
  CompiledCheck,
  CompiledJoint,
  CompiledOperation,
  CompiledPlan,
  CompiledStage,
  CompiledStopgap,
} from './compiled';
import type { PlanDocument } from './document';
import { applies } from './resolve';

const compiled = new WeakMap<PlanDocument, Map<string, CompiledPlan>>();

/** The effective plan for these options. Expects a document that `checkPlan` finds no error in. */
export const compilePlan = (document: PlanDocument, options: Readonly<Record<Key, string>>): CompiledPlan => {
  const key = JSON.stringify(Object.entries(options).sort(([a], [b]) => (a < b ? -1 : 1)));
  const known = compiled.get(document) ?? new Map<string, CompiledPlan>();
  compiled.set(document, known);
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = compile(document, options);
  known.set(key, made);
  return made;
};

const compile = (document: PlanDocument, options: Readonly<Record<Key, string>>): CompiledPlan => {
  const index = planIndex(document, options);
  const operations = compileOperations(index);
  const stopgaps = compileStopgaps(index);
  const joints = compileJoints(index, operations, stopgaps);
  const checks = compileChecks(index, operations);
  return {
    document,
    options,
    stages: index.stages.map((key, at) => compileStage(index, key, at)),
    stageIndex: index.stageIndex,
    operations,
    joints,
    checks,
    stopgaps,
    all: {
      operations: [...operations.values()],
      joints: [...joints.values()],
      checks: [...checks.values()],
    },
    optionsDue: index.stages.map((_, stage) => optionsDue(stage, [operations, joints, checks, stopgaps])),
    setters: groupOperations(operations, (each) =>
      each.body.flatMap((l) => (l.verb === 'set' ? [l.condition] : [])),
    ),
    fitters: groupOperations(operations, (each) =>
      each.body.flatMap((l) => (l.verb === 'fit' ? [l.part] : [])),
    ),
    removers: groupOperations(operations, (each) =>
      each.body.flatMap((l) => (l.verb === 'out' ? [l.stopgap] : [])),
    ),
    madeOn: groupOperations(operations, (each) => (each.madeOn === null ? [] : [each.madeOn])),
    dependants: groupOperations(operations, (each) => optionsBehind(document, each)),
    loadedBy: group([...joints.values()], (joint) => joint.loadedBy),
    under: namedBy(operations, joints, checks),
  };
};

const namedBy = (
  operations: ReadonlyMap<StateKey, CompiledOperation>,
  joints: ReadonlyMap<StateKey, CompiledJoint>,
  checks: ReadonlyMap<StateKey, CompiledCheck>,
): CompiledPlan['under'] => {
  const ofJoints = group([...joints.values()], operationOf);
  const ofChecks = group([...checks.values()], operationOf);
  return new Map(
    [...operations.keys()].map((key) => [
      key,
      { joints: ofJoints.get(key) ?? [], checks: ofChecks.get(key) ?? [] },
    ]),
  );
};

const operationOf = ({ operation }: { readonly operation: StateKey | null }): readonly StateKey[] =>
  operation === null ? [] : [operation];

const compileStage = (index: PlanIndex, key: Key, at: number): CompiledStage => {
  const { stages } = index.document;
  const entry = stages[key];
  const roomOf = (each: Key): Key => stages[each]?.sharesRoomWith ?? each;
  return {
    key,
    index: at,
    name: entry?.name ?? key,
    entry: index.needs(entry?.entry ?? [], undefined, null),
    capacity: stages[roomOf(key)]?.capacity ?? null,
    room: index.stages.filter((each) => roomOf(each) === roomOf(key)),
  };
};

const compileStopgaps = (index: PlanIndex): Map<Key, CompiledStopgap> => {
  const found = new Map<Key, CompiledStopgap>();
  for (const [key, entry] of Object.entries(index.document.stopgaps ?? {})) {
    const is = applies(entry.when, index.options);
    if ('on' in is && !is.on) continue;
    found.set(key, {
      key,
      stateKey: key,
      name: entry.name,
      undecided: 'undecided' in is ? is.undecided : [],
      due: index.stageIndex.get(entry.outBy) ?? 0,
      quantity: entry.quantity,
      slaveIn: (entry.slaveIn ?? []).flatMap((ref) => index.targets(ref, 'joints', undefined, null)),
      adHoc: entry.adHoc ?? false,
    });
  }
  return found;
};

/** An undecided option is unmet by the earliest due among what depends on it. */
const optionsDue = (
  stage: number,
  maps: readonly ReadonlyMap<StateKey, { readonly due: number; readonly undecided: readonly Key[] }>[],
): readonly Key[] => {
  const earliest = new Map<Key, number>();
  for (const map of maps)
    for (const element of map.values())
      for (const option of element.undecided)
        earliest.set(option, Math.min(earliest.get(option) ?? Infinity, element.due));
  return [...earliest].filter(([, due]) => due === stage).map(([option]) => option);
};

/** Options named by the operation's own `when`. */
const optionsBehind = (document: PlanDocument, operation: CompiledOperation): readonly Key[] => {
  const when = document.operations?.[operation.key]?.when ?? '';
  return Object.keys(document.options ?? {}).filter((option) => new RegExp(`\\b${option}=`).test(when));
};

const groupOperations = (
  operations: ReadonlyMap<StateKey, CompiledOperation>,
  keysOf: (operation: CompiledOperation) => readonly Key[],
): ReadonlyMap<Key, readonly CompiledOperation[]> => group([...operations.values()], keysOf);

const group = <T>(
  elements: readonly T[],
  keysOf: (element: T) => readonly Key[],
): ReadonlyMap<Key, readonly T[]> => {
  const found = new Map<Key, T[]>();
  for (const element of elements)
    for (const key of keysOf(element)) {
      const list = found.get(key) ?? [];
      list.push(element);
      found.set(key, list);
    }
  return found;
};
