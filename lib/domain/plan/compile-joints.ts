/** Joints and checks of the effective plan, one for each position. */
import type { Key, Level, StateKey } from '@/lib/domain/base/vocabulary';
import { dueLevelOf } from './compile-operations';
import type { PlanIndex } from './compile-references';
import type {
  CompiledCheck,
  CompiledJoint,
  CompiledOperation,
  CompiledStopgap,
  HardwareLine,
  SequenceStep,
} from './compiled';
import type { CheckEntry, JointEntry } from './document';
import { parseDuration } from './notation';
import { tighteningOrder } from './pattern';
import { positionsOf, stateKey } from './positions';
import { reuseOf } from './reuse';
import { parseLimit, parseSpecification, parseWindow } from './window';

type Operations = ReadonlyMap<StateKey, CompiledOperation>;
type Brought = CompiledJoint['broughtBy'];

export const compileJoints = (
  index: PlanIndex,
  operations: Operations,
  stopgaps: ReadonlyMap<Key, CompiledStopgap>,
): Map<StateKey, CompiledJoint> => {
  const broughtBy = bringers(operations);
  const found = new Map<StateKey, CompiledJoint>();
  for (const [key, entry] of Object.entries(index.document.joints ?? {})) {
    const is = index.appliesTo('joints', key);
    if ('on' in is && !is.on) continue;
    const undecided = 'undecided' in is ? is.undecided : [];
    for (const position of positionsOf(entry.repeat)) {
      const at = stateKey(key, position);
      const joint = compileJoint(index, key, entry, position, broughtBy.get(at) ?? [], operations);
      const slaves = [...stopgaps.values()]
        .filter((each) => each.slaveIn.includes(at))
        .map((each) => each.key);
      found.set(at, { ...joint, undecided, slaves });
    }
  }
  return found;
};

const bringers = (operations: Operations): ReadonlyMap<StateKey, Brought> => {
  const found = new Map<StateKey, { operation: StateKey; level: Level; verb: string }[]>();
  for (const operation of operations.values())
    for (const line of operation.body) {
      if (!('joint' in line)) continue;
      const level: Level = line.verb === 'snug' ? 'snug' : line.verb === 'open' ? 'open' : 'final';
      const list = found.get(line.joint) ?? [];
      list.push({ operation: operation.stateKey, level, verb: line.verb });
      found.set(line.joint, list);
    }
  return found;
};

const compileJoint = (
  index: PlanIndex,
  key: Key,
  entry: JointEntry,
  position: string | null,
  broughtBy: Brought,
  operations: Operations,
): CompiledJoint => {
  const dueLevel = dueLevelOf(entry);
  const own =
    broughtBy.find(({ verb }) => verb === (dueLevel === 'snug' ? 'snug' : 'final')) ??
    broughtBy.find(({ verb }) => verb === 'snug' || verb === 'final');
  const operation = own === undefined ? undefined : operations.get(own.operation);
  return {
    key,
    stateKey: stateKey(key, position),
    name: entry.name,
    undecided: [],
    // A joint that no operation names can only be asked at the last gate.
    due: index.stageIndex.get(entry.due ?? '') ?? operation?.due ?? index.stages.length - 1,
    operation: operation?.stateKey ?? null,
    fasteners: entry.fasteners,
    order: tighteningOrder(entry.pattern, entry.fasteners),
    passes: entry.passes ?? 1,
    method: entry.method,
    specification: parseSpecification(entry.torque ?? 'no value yet') ?? { kind: 'no-value-yet' },
    angle: entry.angle === undefined ? null : parseWindow(entry.angle),
    sequence: Object.entries(entry.sequence ?? {}).map(([step, text]): SequenceStep => ({
      step,
      window: parseWindow(text),
    })),
    hardware: compileHardware(index, entry, position),
    critical: entry.critical ?? false,
    verify: entry.verify ?? null,
    dueLevel,
    who: entry.who ?? operation?.who ?? null,
    verifier: entry.verifier ?? entry.who ?? operation?.who ?? null,
    finalNeeds: index.needs(entry.finalNeeds ?? [], entry.repeat, position),
    disturbs: (entry.disturbs ?? []).flatMap((text) => index.targets(text, 'joints', entry.repeat, position)),
    clears: entry.clears ?? [],
    loadedBy: entry.loadedBy ?? [],
    useOnce: entry.useOnce ?? false,
    slaves: [],
    broughtBy,
  };
};

const compileHardware = (
  index: PlanIndex,
  entry: JointEntry,
  position: string | null,
): readonly HardwareLine[] =>
  Object.entries(entry.hardware ?? {}).map(([item, given]) => {
    const line = typeof given === 'number' ? { quantity: given } : given;
    const shares = line.quantity % entry.fasteners === 0;
    return {
      item,
      quantity: line.quantity,
      per: line.per ?? (shares ? 'fastener' : 'joint'),
      reuse: reuseOf(index.document.items, item),
      dueAgain: (line.dueAgain ?? []).flatMap((key) => workBehind(index, key, entry, position)),
    };
  });

/** The work on the same position, or all of it where the two don't stand on one axis. */
const workBehind = (
  index: PlanIndex,
  key: Key,
  entry: JointEntry,
  position: string | null,
): readonly StateKey[] => {
  const same = index.targets(key, 'operations', entry.repeat, position);
  return same.length > 0 ? same : index.targets(`${key}@*`, 'operations', undefined, null);
};

export const compileChecks = (index: PlanIndex, operations: Operations): Map<StateKey, CompiledCheck> => {
  const doneIn = new Map<StateKey, CompiledOperation>();
  for (const operation of operations.values())
    for (const line of operation.body)
      if (line.verb === 'check' && !doneIn.has(line.check)) doneIn.set(line.check, operation);
  const found = new Map<StateKey, CompiledCheck>();
  for (const [key, entry] of Object.entries(index.document.checks ?? {})) {
    const is = index.appliesTo('checks', key);
    if ('on' in is && !is.on) continue;
    const undecided = 'undecided' in is ? is.undecided : [];
    for (const position of positionsOf(entry.repeat)) {
      const check = compileCheck(index, key, entry, position, doneIn);
      found.set(check.stateKey, { ...check, undecided });
    }
  }
  return found;
};

const compileCheck = (
  index: PlanIndex,
  key: Key,
  entry: CheckEntry,
  position: string | null,
  doneIn: ReadonlyMap<StateKey, CompiledOperation>,
): CompiledCheck => {
  const at = stateKey(key, position);
  const operation = doneIn.get(at);
  return {
    key,
    stateKey: at,
    name: entry.name,
    undecided: [],
    due: index.stageIndex.get(entry.due ?? '') ?? operation?.due ?? index.stages.length - 1,
    operation: operation?.stateKey ?? null,
    kind: entry.kind,
    values: Object.entries(entry.values ?? {}).flatMap(([name, text]) => {
      const limit = parseLimit(text);
      return limit === null ? [] : [{ name, limit }];
    }),
    holdsMs: entry.holds === undefined ? 0 : (parseDuration(entry.holds) ?? 0),
    who: entry.who ?? operation?.who ?? null,
    about: entry.about ?? null,
    critical: entry.critical ?? false,
    neverConcede: entry.neverConcede ?? false,
    pair: entry.pair ?? false,
  };
};
