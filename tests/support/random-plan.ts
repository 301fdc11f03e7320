/**
 * Random plans that can be built, by construction: the order of the operations is the order of the file, and needs,
 * dues, covers, conditions and stopgaps are only ever laid along it (D39). What may fall due again (the work that
 * sets a condition anew, the work behind renewed hardware) never needs what the plan itself has undone since.
 */
import fc from 'fast-check';
import type { Method } from '@/lib/domain/base/vocabulary';
import type {
  CheckEntry,
  HardwareQuantity,
  ItemEntry,
  JointEntry,
  OperationEntry,
  PartEntry,
  PlanDocument,
  StageEntry,
  StopgapEntry,
} from '@/lib/domain/plan/document';

type Draft<T> = { -readonly [Key in keyof T]: T[Key] };
type OperationDraft = Draft<OperationEntry> & { needs: string[]; body: string[]; covers: string[] };

const pick = fc.nat({ max: 999 });
/** True about so many times in a hundred; shrinks to false. */
const chance = (percent: number): fc.Arbitrary<boolean> =>
  fc.nat({ max: 99 }).map((drawn) => drawn >= 100 - percent);

const operationSpec = fc.record({
  next: chance(35),
  needs: fc.array(pick, { maxLength: 2 }),
  needsAsJoint: chance(40),
  who: chance(50),
  two: chance(15),
  wait: chance(20),
  repeatable: chance(15),
  notBefore: chance(15),
  late: chance(15),
  sides: chance(20),
  optional: chance(12),
  photo: chance(15),
});

const jointSpec = fc.record({
  snugIn: pick,
  finalIn: pick,
  method: pick,
  window: pick,
  fasteners: fc.integer({ min: 1, max: 3 }),
  passes: fc.integer({ min: 1, max: 2 }),
  sides: chance(20),
  verify: fc.nat({ max: 5 }),
  critical: chance(20),
  late: chance(15),
  disturbs: fc.array(pick, { maxLength: 2 }),
  covered: chance(20),
  before: chance(20),
  later: pick,
  useOnce: chance(12),
  hardware: fc.nat({ max: 6 }),
  needsCondition: chance(30),
  loaded: chance(30),
  condition: pick,
  reopened: chance(20),
  retorqued: chance(12),
  dueAgain: chance(30),
});

const conditionSpec = fc.record({
  setIn: pick,
  isUndone: chance(40),
  undoneIn: pick,
  byJoint: pick,
  isByJoint: chance(60),
  neededIn: fc.array(pick, { maxLength: 2 }),
  forbiddenIn: fc.array(pick, { maxLength: 1 }),
  entry: chance(70),
});

const checkSpec = fc.record({
  in: pick,
  kind: fc.nat({ max: 2 }),
  before: chance(30),
  later: pick,
  late: chance(15),
  sides: chance(15),
  about: fc.nat({ max: 3 }),
  target: pick,
  critical: chance(20),
  neverConcede: chance(20),
  pair: chance(20),
});

const stopgapSpec = fc.record({
  placedIn: pick,
  outIn: pick,
  quantity: fc.integer({ min: 1, max: 3 }),
  slave: chance(50),
  joint: pick,
  neededOut: chance(40),
  later: pick,
});

const partSpec = fc.record({ fittedIn: pick, critical: chance(30), madeOn: chance(30), later: pick });

const planSpec = fc.record({
  stages: fc.integer({ min: 2, max: 4 }),
  capacity: fc.array(fc.nat({ max: 3 }), { minLength: 4, maxLength: 4 }),
  operations: fc.array(operationSpec, { minLength: 2, maxLength: 10 }),
  joints: fc.array(jointSpec, { minLength: 1, maxLength: 8 }),
  conditions: fc.array(conditionSpec, { maxLength: 3 }),
  checks: fc.array(checkSpec, { maxLength: 4 }),
  stopgaps: fc.array(stopgapSpec, { maxLength: 2 }),
  parts: fc.array(partSpec, { maxLength: 2 }),
});
type PlanSpec = typeof planSpec extends fc.Arbitrary<infer Spec> ? Spec : never;

const METHODS: readonly (Method | 'no value yet')[] = [
  'click',
  'dial',
  'digital',
  'prevailing',
  'angle',
  'sequence',
  'firm',
  'no value yet',
  'click',
  'click',
];
const WINDOWS = ['45 ± 3 N·m', '80 to 100 N·m', '30 ± 10 % lbf·ft', '25 to 28 N·m'];
const VERIFY = ['witnessed', 're-applied', 'seen'] as const;

export const ITEMS: Readonly<Record<string, ItemEntry>> = {
  bolt: { name: 'bolt', reuse: 'always', trace: 'lot' },
  nut: { name: 'lock nut', reuse: '2 times', trace: 'lot' },
  pin: { name: 'split pin', reuse: 'once fitted', trace: 'lot' },
  stretch: { name: 'stretch bolt', reuse: 'once final', trace: 'lot' },
  gasket: { name: 'gasket', reuse: 'once final', trace: 'lot' },
};

interface Made {
  readonly stageOf: readonly number[];
  readonly operations: OperationDraft[];
  /** Operations that may fall due again by what the rules do, not by being run again at will. */
  readonly again: Set<number>;
  readonly last: number;
}

const stageKey = (index: number): string => `S${String(index + 1)}`;
const operationKey = (index: number): string => `O-${String(index + 1)}`;
const jointKey = (index: number): string => `J-${String(index + 1)}`;
const conditionKey = (index: number): string => `c${String(index + 1)}`;

const at = <T>(list: readonly T[], drawn: number): T | undefined =>
  list.length === 0 ? undefined : list[drawn % list.length];
const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);

const HEATER = 'heater=fitted';

const startOperations = (spec: PlanSpec): Made => {
  const last = spec.stages - 1;
  let stage = 0;
  const stageOf: number[] = [];
  const operations = spec.operations.map((each, index): OperationDraft => {
    if (each.next && index > 0) stage = Math.min(last, stage + 1);
    stageOf.push(stage);
    return {
      name: `operation ${String(index + 1)}`,
      stage: stageKey(stage),
      needs: [],
      body: each.photo ? ['photo stamp'] : [],
      covers: [],
      ...(each.who ? { who: 'torque' } : {}),
      ...(each.two ? { crew: 2 } : {}),
      ...(each.wait ? { wait: '4 h' } : {}),
      ...(each.repeatable ? { repeatable: true } : {}),
      ...(each.notBefore ? { notBefore: true } : {}),
      ...(each.late ? { due: stageKey(Math.min(last, stage + 1)) } : {}),
      ...(each.sides ? { repeat: 'sides' as const } : {}),
      ...(each.optional ? { when: HEATER } : {}),
    };
  });
  for (const [index, each] of spec.operations.entries())
    for (const drawn of each.needs) {
      const earlier = at(range(0, index), drawn);
      if (earlier === undefined) continue;
      const entry = operations[earlier];
      operations[index]?.needs.push(
        entry?.wait === undefined ? operationKey(earlier) : `wait ${operationKey(earlier)}`,
      );
    }
  return { stageOf, operations, again: new Set(), last };
};

interface JointPlace {
  readonly key: string;
  readonly entry: Draft<JointEntry>;
  readonly final: number;
  readonly isSnugOnly: boolean;
}

const bodyOf = (made: Made, index: number): string[] => made.operations[index]?.body ?? [];
const isOptional = (made: Made, index: number): boolean => made.operations[index]?.when !== undefined;
const firm = (made: Made): readonly number[] =>
  range(0, made.operations.length).filter((index) => !isOptional(made, index));

const hardwareOf = (drawn: number, fasteners: number): Record<string, HardwareQuantity> => {
  switch (drawn) {
    case 1:
      return { bolt: fasteners };
    case 2:
      return { bolt: fasteners, nut: fasteners };
    case 3:
      return { pin: fasteners };
    case 4:
      return { stretch: fasteners };
    case 5:
      return { stretch: fasteners, gasket: { quantity: 1, per: 'joint' } };
    default:
      return {};
  }
};

const placeJoints = (spec: PlanSpec, made: Made): JointPlace[] =>
  spec.joints.map((each, index): JointPlace => {
    const key = jointKey(index);
    const final = each.finalIn % made.operations.length;
    const snug = isOptional(made, final)
      ? final
      : (at(
          firm(made).filter((i) => i <= final),
          each.snugIn,
        ) ?? final);
    const method = at(METHODS, each.method) ?? 'click';
    const isSnugOnly = method === 'no value yet';
    if (snug !== final || isSnugOnly) bodyOf(made, isSnugOnly ? final : snug).push(`snug ${key}`);
    if (!isSnugOnly) bodyOf(made, final).push(`final ${key}`);
    const verify = each.verify > 0 && each.verify <= 3 ? at(VERIFY, each.verify) : undefined;
    const entry: Draft<JointEntry> = {
      name: `joint ${String(index + 1)}`,
      fasteners: each.fasteners,
      passes: method === 'firm' || method === 'sequence' ? 1 : each.passes,
      method: isSnugOnly ? 'click' : method,
      source: 'invented',
      ...(method === 'sequence'
        ? { sequence: { seat: '20 to 30 N·m', 'back off': 'done' } }
        : { torque: torqueOf(method, each.window) }),
      ...(method === 'firm' ? { firmMeans: 'no gap left' } : {}),
      ...(method === 'angle' ? { angle: '90 ± 5 °' } : {}),
      ...(each.sides ? { repeat: 'sides' as const } : {}),
      ...(isOptional(made, final) ? { when: HEATER } : {}),
      ...(isSnugOnly
        ? { dueLevel: 'snug' as const }
        : {
            ...(each.critical ? { critical: true, verify: verify ?? ('seen' as const) } : {}),
            ...(verify === undefined ? {} : { verify }),
            ...(each.useOnce ? { useOnce: true } : {}),
          }),
      ...(each.late ? { due: stageKey(Math.min(made.last, (made.stageOf[final] ?? 0) + 1)) } : {}),
      hardware: hardwareOf(each.hardware, each.fasteners),
    };
    return { key, entry, final, isSnugOnly };
  });

const torqueOf = (method: string, drawn: number): string => {
  if (method === 'firm') return 'no value published';
  return method === 'no value yet' ? 'no value yet' : (at(WINDOWS, drawn) ?? '45 ± 3 N·m');
};

interface ConditionPlace {
  readonly key: string;
  readonly setIn: number;
  readonly undoneIn: number | null;
  readonly openedBy: string | null;
}

/** First those that opening a joint ends (their setters may run again), then those that the plan itself ends. */
const placeConditions = (spec: PlanSpec, made: Made, joints: readonly JointPlace[]): ConditionPlace[] => {
  const found: ConditionPlace[] = [];
  for (const [index, each] of spec.conditions.entries()) {
    if (each.isUndone) continue;
    const key = conditionKey(index);
    const setIn = at(firm(made), each.setIn);
    if (setIn === undefined) continue;
    const joint = each.isByJoint ? at(joints, each.byJoint) : undefined;
    const setter = made.operations[setIn];
    if (setter === undefined) continue;
    setter.body.push(`set ${key}`);
    if (joint !== undefined) {
      setter.redo = true;
      made.again.add(setIn);
      joint.entry.clears = [...(joint.entry.clears ?? []), key];
    }
    found.push({ key, setIn, undoneIn: null, openedBy: joint?.key ?? null });
  }
  return found;
};

/** Work behind renewed hardware: chosen before anything is laid that could not be done twice. */
const placeDueAgain = (spec: PlanSpec, made: Made, joints: readonly JointPlace[]): void => {
  for (const [index, { entry, final }] of joints.entries()) {
    const each = spec.joints[index];
    if (each?.dueAgain !== true) continue;
    const operation = at(
      firm(made).filter((one) => one <= final),
      each.later,
    );
    const item = Object.keys(entry.hardware ?? {}).find(
      (one) => ITEMS[one]?.reuse?.startsWith('once') === true,
    );
    if (operation === undefined || item === undefined) continue;
    made.again.add(operation);
    const given = entry.hardware?.[item] ?? 1;
    const quantity = typeof given === 'number' ? { quantity: given } : given;
    entry.hardware = { ...entry.hardware, [item]: { ...quantity, dueAgain: [operationKey(operation)] } };
  }
};

const placeUndone = (spec: PlanSpec, made: Made): ConditionPlace[] =>
  spec.conditions.flatMap((each, index): ConditionPlace[] => {
    const once = firm(made).filter((one) => !made.again.has(one));
    const key = conditionKey(index);
    const setIn = each.isUndone ? at(once, each.setIn) : undefined;
    if (setIn === undefined) return [];
    const undoneIn =
      at(
        once.filter((one) => one > setIn),
        each.undoneIn,
      ) ?? null;
    bodyOf(made, setIn).push(`set ${key}`);
    if (undoneIn !== null) bodyOf(made, undoneIn).push(`clear ${key}`);
    return [{ key, setIn, undoneIn, openedBy: null }];
  });

const needConditions = (spec: PlanSpec, made: Made, conditions: readonly ConditionPlace[]): string[][] => {
  const entries: string[][] = range(0, spec.stages).map(() => []);
  const all = range(0, made.operations.length);
  for (const { key, setIn, undoneIn } of conditions) {
    const each = spec.conditions[Number(key.slice(1)) - 1];
    if (each === undefined) continue;
    // Where both sides undo it, the second side must not need what the first has undone.
    const lastNeed =
      made.operations[undoneIn ?? -1]?.repeat === undefined ? (undoneIn ?? 0) : (undoneIn ?? 0) - 1;
    const mayNeed = all.filter(
      (one) => one > setIn && (undoneIn === null || (one <= lastNeed && !made.again.has(one))),
    );
    for (const drawn of each.neededIn) made.operations[at(mayNeed, drawn) ?? -1]?.needs.push(`+${key}`);
    const mayForbid = all.filter(
      (one) => !made.again.has(one) && (one < setIn || (undoneIn !== null && one > undoneIn)),
    );
    for (const drawn of each.forbiddenIn) made.operations[at(mayForbid, drawn) ?? -1]?.needs.push(`-${key}`);
    if (!each.entry) continue;
    const dueAt = (index: number): number => {
      const entry = made.operations[index];
      return Number((entry?.due ?? entry?.stage ?? 'S1').slice(1)) - 1;
    };
    const settled = undoneIn ?? setIn;
    entries[dueAt(settled) + 1]?.push(undoneIn === null ? `+${key}` : `-${key}`);
  }
  return entries;
};

const weave = (
  spec: PlanSpec,
  made: Made,
  joints: readonly JointPlace[],
  conditions: readonly ConditionPlace[],
): void => {
  const all = range(0, made.operations.length);
  for (const [index, { key, entry, final, isSnugOnly }] of joints.entries()) {
    const each = spec.joints[index];
    if (each === undefined) continue;
    const disturbed = each.disturbs
      .flatMap((drawn) => at(joints, drawn) ?? [])
      .filter((one) => one.key !== key);
    if (disturbed.length > 0) entry.disturbs = [...new Set(disturbed.map((one) => one.key))];
    const later = all.filter((one) => one > final);
    const next = at(later, each.later);
    const isWide = entry.repeat === 'sides';
    if (next !== undefined && each.covered) made.operations[next]?.covers.push(key);
    if (next !== undefined && each.before) entry.before = operationKey(next);
    if (isSnugOnly) continue;
    const usable = conditions.filter(
      (one) => one.undoneIn === null && one.setIn < final && !(entry.clears ?? []).includes(one.key),
    );
    const needed = at(usable, each.condition);
    if (each.needsCondition && needed !== undefined) entry.finalNeeds = [`+${needed.key}`];
    const load = at(conditions, each.condition);
    if (each.loaded && load !== undefined && !each.useOnce) entry.loadedBy = [load.key];
    const opener = at(
      later.filter(
        (one) =>
          !made.again.has(one) &&
          (isWide || made.operations[one]?.repeat === undefined) &&
          !isOptional(made, one),
      ),
      each.later,
    );
    if (each.reopened && opener !== undefined) {
      const lines = bodyOf(made, opener);
      if (!lines.includes(`final ${key}`)) lines.push(`open ${key}`, `final ${key}`);
      for (const neighbour of disturbed)
        if (!neighbour.isSnugOnly && neighbour.final < opener && !lines.includes(`recheck ${neighbour.key}`))
          lines.push(`recheck ${neighbour.key}`);
    } else if (each.retorqued && next !== undefined) bodyOf(made, next).push(`retorque ${key}`);
  }
};

const placeNeedsOnJoints = (spec: PlanSpec, made: Made, joints: readonly JointPlace[]): void => {
  for (const [index, each] of spec.operations.entries()) {
    if (!each.needsAsJoint) continue;
    const joint = at(
      joints.filter((one) => one.final < index),
      each.needs[0] ?? 0,
    );
    if (joint === undefined) continue;
    const level = joint.isSnugOnly ? 'snug' : joint.entry.verify === undefined ? 'final' : 'verified';
    made.operations[index]?.needs.push(`${joint.key} ${level}`);
  }
};

const placeChecks = (spec: PlanSpec, made: Made, joints: readonly JointPlace[]): Record<string, CheckEntry> =>
  Object.fromEntries(
    spec.checks.map((each, index): [string, CheckEntry] => {
      const key = `K-${String(index + 1)}`;
      const place = each.in % made.operations.length;
      bodyOf(made, place).push(`check ${key}`);
      const next = at(range(place + 1, made.operations.length), each.later);
      const single = joints.filter((one) => one.entry.repeat === undefined && one.entry.when === undefined);
      const about = each.about === 1 ? at(single, each.target)?.key : each.about === 2 ? 'P-1' : undefined;
      const isThere = about !== 'P-1' || spec.parts.length > 0;
      return [
        key,
        {
          name: `check ${String(index + 1)}`,
          ...checkKind(each.kind),
          source: 'invented',
          ...(each.sides ? { repeat: 'sides' as const } : {}),
          ...(isOptional(made, place) ? { when: HEATER } : {}),
          ...(each.before && next !== undefined ? { before: operationKey(next) } : {}),
          ...(each.late ? { due: stageKey(Math.min(made.last, (made.stageOf[place] ?? 0) + 1)) } : {}),
          ...(about === undefined || !isThere ? {} : { about }),
          ...(each.critical ? { critical: true } : {}),
          ...(each.neverConcede ? { neverConcede: true } : {}),
          ...(each.pair ? { pair: true } : {}),
        },
      ];
    }),
  );

const checkKind = (drawn: number): Pick<CheckEntry, 'kind' | 'values' | 'holds'> => {
  if (drawn === 0) return { kind: 'visual', values: { look: 'none cracked' } };
  if (drawn === 1) return { kind: 'measured', values: { play: '<= 0.2 mm', gap: '2 ± 0.5 mm' } };
  return { kind: 'functional', holds: '10 min', values: { pressure: '>= 70 bar' } };
};

const placeStopgaps = (
  spec: PlanSpec,
  made: Made,
  joints: readonly JointPlace[],
): Record<string, StopgapEntry> => {
  const found: Record<string, StopgapEntry> = {};
  for (const [index, each] of spec.stopgaps.entries()) {
    const placedIn = at(firm(made), each.placedIn);
    const outIn =
      placedIn === undefined
        ? undefined
        : at(
            firm(made).filter((one) => one > placedIn),
            each.outIn,
          );
    if (placedIn === undefined || outIn === undefined) continue;
    const key = `G-${String(index + 1)}`;
    bodyOf(made, placedIn).push(`place ${key}`);
    bodyOf(made, outIn).push(`out ${key}`);
    const slave = at(
      joints.filter((one) => one.final >= outIn),
      each.joint,
    );
    found[key] = {
      name: `stopgap ${String(index + 1)}`,
      quantity: each.quantity,
      outBy: made.operations[outIn]?.due ?? stageKey(made.stageOf[outIn] ?? 0),
      ...(each.slave && slave !== undefined ? { slaveIn: [slave.key] } : {}),
    };
    const next = at(range(outIn + 1, made.operations.length), each.later);
    if (each.neededOut && next !== undefined) made.operations[next]?.needs.push(`${key} out`);
  }
  return found;
};

const placeParts = (spec: PlanSpec, made: Made): Record<string, PartEntry> =>
  Object.fromEntries(
    spec.parts.map((each, index): [string, PartEntry] => {
      const key = `P-${String(index + 1)}`;
      const place = at(firm(made), each.fittedIn);
      const operation = place === undefined ? undefined : made.operations[place];
      operation?.needs.push(`part ${key}`);
      operation?.body.push(`fit ${key}`);
      const later = at(range((place ?? 0) + 1, made.operations.length), each.later);
      const maker = later === undefined ? undefined : made.operations[later];
      if (each.madeOn && maker !== undefined) maker.madeOn = key;
      return [key, { name: `part ${String(index + 1)}`, ...(each.critical ? { critical: true } : {}) }];
    }),
  );

const buildPlan = (spec: PlanSpec): PlanDocument => {
  const made = startOperations(spec);
  if (firm(made).length === 0) for (const operation of made.operations) delete operation.when;
  const joints = placeJoints(spec, made);
  const lasting = placeConditions(spec, made, joints);
  placeDueAgain(spec, made, joints);
  const conditions = [...lasting, ...placeUndone(spec, made)];
  const entries = needConditions(spec, made, conditions);
  weave(spec, made, joints, conditions);
  placeNeedsOnJoints(spec, made, joints);
  const checks = placeChecks(spec, made, joints);
  const stopgaps = placeStopgaps(spec, made, joints);
  const parts = placeParts(spec, made);
  const stages = Object.fromEntries(
    range(0, spec.stages).map((index): [string, StageEntry] => {
      const capacity = spec.capacity[index] ?? 0;
      return [
        stageKey(index),
        {
          name: `stage ${String(index + 1)}`,
          entry: entries[index] ?? [],
          ...(capacity === 1 ? { capacity } : {}),
        },
      ];
    }),
  );
  return {
    plan: 'random',
    revision: 'r1',
    options: { heater: { name: 'Heater', choices: ['fitted', 'none'] } },
    conditions: Object.fromEntries(conditions.map(({ key }) => [key, `condition ${key}`])),
    stages,
    operations: Object.fromEntries(made.operations.map((entry, index) => [operationKey(index), entry])),
    joints: Object.fromEntries(joints.map(({ key, entry }) => [key, entry])),
    checks,
    stopgaps,
    parts,
    items: ITEMS,
  };
};

/** 2 to 4 stages, 2 to 10 operations, 1 to 8 joints, and all that may hang on them. */
export const randomPlan: fc.Arbitrary<PlanDocument> = planSpec.map(buildPlan);
