/** What follows by itself, written once: each is an event of its own, with the values of this moment. */
import type { Key, Level, StateKey } from '@/lib/domain/base/vocabulary';
import { WHOLE, spentByOpening } from '@/lib/domain/car/hardware';
import { UNTOUCHED_JOINT, levelOf, standingFinal } from '@/lib/domain/car/joint';
import type { Doubt, JointRow, RunRef } from '@/lib/domain/car/joint-rows';
import type { CarPayload } from '@/lib/domain/events';
import type { CompiledJoint, CompiledOperation } from '@/lib/domain/plan/compiled';
import type { Case } from './case';

/** A finished operation is due once more, and the checks it holds with it. */
export const dueAgain = (at: Case, operation: CompiledOperation, because: string): readonly CarPayload[] => {
  const row = at.car.operations[operation.stateKey];
  if (row?.status !== 'finished') return [];
  return [
    { type: 'operation-due-again', operation: operation.stateKey, run: row.run + 1, because },
    ...checksDueAgain(at, operation, because),
  ];
};

export const checksDueAgain = (
  at: Case,
  operation: CompiledOperation,
  because: string,
): readonly CarPayload[] =>
  operation.body.flatMap((line) => (line.verb === 'check' ? checkDueAgain(at, line.check, because) : []));

/** Only a check that somebody had settled can fall due again. */
export const checkDueAgain = (at: Case, check: StateKey, because: string): readonly CarPayload[] => {
  const row = at.car.checks[check];
  return row?.status === 'clear' || row?.status === 'conceded'
    ? [{ type: 'check-due-again', check, round: row.round + 1, because }]
    : [];
};

/** A condition is no longer so: what sets it runs again, where the plan marks that work `redo` (D16). */
export const conditionCleared = (
  at: Case,
  condition: Key,
  because: string,
  run: RunRef | null,
): readonly CarPayload[] => {
  if (at.car.conditions[condition]?.value !== true) return [];
  return [
    { type: 'condition-cleared', condition, run, because },
    ...loadChanged(at, condition, 'off'),
    ...(at.plan.setters.get(condition) ?? [])
      .filter((operation) => operation.redo && operation.stateKey !== run?.operation)
      .flatMap((operation) => dueAgain(at, operation, `${condition} is lost: ${because}`)),
  ];
};

/** A condition becomes true. */
export const conditionSet = (
  at: Case,
  condition: Key,
  because: string,
  run: RunRef | null,
): readonly CarPayload[] => [
  { type: 'condition-set', condition, run, because },
  ...(at.car.conditions[condition]?.value === true ? [] : loadChanged(at, condition, 'on')),
];

/** Joints that take this load were final while it was otherwise: put on or taken off since, it changes what they hold. */
const loadChanged = (at: Case, condition: Key, way: 'on' | 'off'): readonly CarPayload[] =>
  (at.plan.loadedBy.get(condition) ?? []).flatMap((joint): readonly CarPayload[] => {
    const row = at.car.joints[joint.stateKey];
    const final = standingFinal(row);
    if (row === undefined || final === null || final.loaded.includes(condition) === (way === 'on')) return [];
    const because = way === 'on' ? 'came on after it was final' : 'was taken off after it was final';
    return [
      {
        type: 'joint-doubted',
        joint: joint.stateKey,
        cycle: row.cycle,
        doubt: doubt(at, joint, 'load-changed', 'retorque', `${condition} ${because}`),
      },
    ];
  });

/** A joint that may be tightened only once has one remedy: renew. */
export const doubt = (
  at: Case,
  joint: CompiledJoint,
  cause: Doubt['cause'],
  remedy: Doubt['remedy'],
  because: string,
  fasteners: readonly number[] | null = null,
): Doubt => ({
  cause,
  remedy: joint.useOnce ? 'renew' : remedy,
  fasteners,
  because,
  at: at.facts.judgedAt,
});

/** Fasteners come loose: a new cycle, spent hardware, doubted neighbours, lost conditions. */
export const jointOpened = (
  at: Case,
  joint: CompiledJoint,
  fasteners: readonly number[],
  run: RunRef | null,
  told: { readonly reason: string | null; readonly namedCycle: number | null },
): readonly CarPayload[] => {
  const row = at.car.joints[joint.stateKey] ?? UNTOUCHED_JOINT;
  const was: Level = levelOf(row);
  const isTouched = row.marks.length + row.rechecks.length + row.doubts.length > 0;
  const because = `${joint.stateKey} was opened`;
  const spent = {
    ...spentByOpening(joint, row, fasteners, standingFinal(row) === null ? was : 'final'),
    ...overTorquedItems(row, fasteners),
  };
  const renewed = [...Object.values(spent).flat(), ...itemsOfBadLots(at, row, fasteners)];
  return distinct([
    {
      type: 'joint-opened',
      joint: joint.stateKey,
      cycle: isTouched ? row.cycle + 1 : row.cycle,
      fasteners,
      was,
      run,
      spent,
      ...told,
    },
    ...joint.disturbs.flatMap((neighbour) => neighbourDoubted(at, neighbour, because)),
    ...joint.clears.flatMap((condition) => conditionCleared(at, condition, because, run)),
    ...joint.hardware
      .filter((line) => renewed.includes(line.item))
      .flatMap((line) => line.dueAgain)
      .flatMap((key) => at.plan.operations.get(key) ?? [])
      .flatMap((operation) => dueAgain(at, operation, `${because}, with hardware that this work made`)),
  ]);
};

/** A piece of a lot that is kept apart is not spent, in case the lot is cleared; but as it stands, it is renewed. */
const itemsOfBadLots = (
  { facts }: Case,
  row: { readonly fasteners: JointRow['fasteners'] },
  opened: readonly number[],
): readonly Key[] =>
  Object.entries(row.fasteners)
    .filter(([place]) => place === WHOLE || opened.includes(Number(place)))
    .flatMap(([, items]) => Object.entries(items))
    .filter(([, { lot }]) => lot !== null && (facts.lots[lot]?.quarantined ?? null) !== null)
    .map(([item]) => item);

/** Nothing of an over-torqued fastener goes back in. */
const overTorquedItems = (
  row: { readonly doubts: readonly Doubt[]; readonly fasteners: Readonly<Record<string, object>> },
  opened: readonly number[],
): Readonly<Record<string, readonly Key[]>> =>
  Object.fromEntries(
    row.doubts
      .filter((each) => each.cause === 'over-torque')
      .flatMap((each) => each.fasteners ?? [])
      .filter((fastener) => opened.includes(fastener))
      .map((fastener) => [String(fastener), Object.keys(row.fasteners[String(fastener)] ?? {})]),
  );

const neighbourDoubted = (at: Case, key: StateKey, because: string): readonly CarPayload[] => {
  const joint = at.plan.joints.get(key);
  const row = at.car.joints[key];
  if (joint === undefined || row === undefined || standingFinal(row) === null) return [];
  return [
    {
      type: 'joint-doubted',
      joint: key,
      cycle: row.cycle,
      doubt: doubt(at, joint, 'neighbour-opened', 'recheck', because),
    },
  ];
};

/** Two causes may call for the same work: it is due once. */
export const distinct = (events: readonly CarPayload[]): readonly CarPayload[] => {
  const seen = new Set<string>();
  return events.filter((event) => {
    if (event.type !== 'operation-due-again' && event.type !== 'check-due-again') return true;
    const key = event.type === 'check-due-again' ? event.check : event.operation;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};
