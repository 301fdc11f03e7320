/** The one function that says "not yet": which of these requirements a car does not meet, and why. */
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { isAtLevel } from './base/vocabulary';
import type { DoubtCause, Key, Level, MarkLevel, StateKey } from './base/vocabulary';
import { lastOuting } from './car/component-rows';
import { doubtsOf, levelOf } from './car/joint';
import type { DoubtFacts } from './car/joint';
import type { Doubt } from './car/joint-rows';
import type { Car, OperationRow, StopgapRow } from './car/rows';
import { waitEnd } from './car/wait';
import type { Facts } from './facts';
import type { CompiledPlan, Requirement } from './plan/compiled';
import { waitsForLook } from './shop/components';

/** What a requirement is judged against besides the car: tools and lots for doubts, clocks for waits. */
export type UnmetFacts = DoubtFacts & Pick<Facts, 'now' | 'judgedAt'>;

/** Every requirement of the list that is not met, in the list's order. An empty answer means "go on". */
export const unmet = (
  plan: CompiledPlan,
  car: Car,
  facts: UnmetFacts,
  requirements: readonly Requirement[],
): readonly Refusal[] => {
  let found: Refusal[] | null = null;
  for (const requirement of requirements) {
    const refusal = unmetOne(plan, car, facts, requirement);
    if (refusal !== null) (found ??= []).push(refusal);
  }
  return found ?? NOTHING;
};

const NOTHING: readonly Refusal[] = [];

const unmetOne = (
  plan: CompiledPlan,
  car: Car,
  facts: UnmetFacts,
  requirement: Requirement,
): Refusal | null => {
  switch (requirement.kind) {
    case 'operation-finished':
      return car.operations[requirement.operation] === undefined
        ? requirement.untouched
        : unfinished(car, requirement.operation);
    case 'joint-at-level':
      return car.joints[requirement.joint] === undefined
        ? requirement.untouched
        : belowLevel(car, facts, requirement.joint, requirement.level);
    case 'check-clear':
      return car.checks[requirement.check] === undefined
        ? requirement.untouched
        : notClear(car, requirement.check);
    case 'stopgap-out':
      return inPlace(car, requirement.stopgap);
    case 'condition': {
      const { condition, value, otherwise } = requirement;
      return (car.conditions[condition]?.value ?? false) === value ? null : otherwise;
    }
    case 'wait-over': {
      const wait = waitEnd(car.operations[requirement.operation]);
      if (wait === 'over') return null;
      if (wait !== 'not finished' && wait.judged <= facts.judgedAt && wait.received <= facts.now) return null;
      const until =
        wait === 'not finished' ? null : wait.judged > wait.received ? wait.judged : wait.received;
      return refuse('wait-running', { operation: requirement.operation, until });
    }
    case 'part-present': {
      const state = car.parts[requirement.part]?.state;
      return state === 'present' || state === 'fitted' ? null : notHere(plan, car, requirement.part);
    }
    case 'photo-present':
      return hasPhoto(car, requirement.of, requirement.slot)
        ? null
        : refuse('photo-missing', { of: requirement.of, slot: requirement.slot });
    case 'option-chosen':
      return car.options[requirement.option] === undefined
        ? refuse('option-undecided', {
            option: requirement.option,
            choices: plan.document.options?.[requirement.option]?.choices ?? [],
          })
        : null;
  }
};

/** Why a part does not count as here: away, not looked over, or simply not there. */
export const notHere = (plan: CompiledPlan, car: Car, part: Key): Refusal => {
  const state = car.parts[part]?.state;
  if (state === 'out' || state === 'back') return awayRefusal(car, part);
  return waitsForLook(plan, car, part)
    ? refuse('part-not-looked-over', { part })
    : refuse('part-absent', { part });
};

/** The refusal for a part that is out of the house, or back and not looked over. */
export const awayRefusal = (car: Car, part: Key): Refusal => {
  const outing = lastOuting(car.components[part]);
  const isBack = car.parts[part]?.state === 'back';
  return refuse('part-away', { part, trip: outing?.trip ?? '', due: outing?.due ?? null, isBack });
};

const STATUS: Readonly<Record<OperationRow['status'], 'running' | 'paused' | 'due again' | null>> = {
  running: 'running',
  paused: 'paused',
  'due-again': 'due again',
  finished: null,
};

/** The refusal for an operation that is not finished in its latest run, or null. */
export const unfinished = (car: Car, operation: StateKey): Refusal | null => {
  const row = car.operations[operation];
  const status = row === undefined ? 'not started' : STATUS[row.status];
  return status === null ? null : refuse('operation-unfinished', { operation, status });
};

/**
 * The refusal for a joint that does not count at this level, or null. Snug promises the right hardware in contact and
 * no torque: a doubt about the torque leaves it standing, so that work which only asks for contact may go on while the
 * final above it is mended (its load may have to come back first).
 */
export const belowLevel = (
  car: Car,
  facts: DoubtFacts,
  joint: StateKey,
  wanted: MarkLevel,
): Refusal | null => {
  const row = car.joints[joint];
  const level = levelOf(row);
  return levelUnmet(joint, level, isAtLevel(level, wanted) ? doubtsOf(row, facts) : NO_DOUBT, wanted);
};

const NO_DOUBT: readonly Doubt[] = [];

/** The same, for who knows the joint's level and doubts already. */
export const levelUnmet = (
  joint: StateKey,
  level: Level,
  doubts: readonly Doubt[],
  wanted: MarkLevel,
): Refusal | null => {
  if (!isAtLevel(level, wanted)) return refuse('joint-below-level', { joint, level, wanted });
  const doubt = wanted === 'snug' ? doubts.find(({ cause }) => HARDWARE_DOUBTS.includes(cause)) : doubts[0];
  return doubt === undefined
    ? null
    : refuse('joint-in-doubt', { joint, cause: doubt.cause, remedy: doubt.remedy, because: doubt.because });
};

const HARDWARE_DOUBTS: readonly DoubtCause[] = ['over-torque', 'lot-quarantined'];

/** The refusal for a check that is not clear, or null. One that was conceded counts as clear. */
export const notClear = (car: Car, check: StateKey): Refusal | null => {
  const row = car.checks[check];
  switch (row?.status) {
    case undefined:
      return refuse('check-not-clear', { check, status: 'not done' });
    case 'failed':
      return refuse('check-not-clear', { check, status: failedStatus(car, row.finding) });
    case 'due-again':
      return refuse('check-not-clear', { check, status: 'due again' });
    case 'running':
      return refuse('check-not-clear', { check, status: 'running' });
    case 'clear':
    case 'conceded':
      return null;
  }
};

/** What a failed check waits for now: nobody is told to decide what is decided. */
const failedStatus = (
  car: Car,
  finding: string | null,
): 'failed' | 'failed, decided' | 'failed, change asked' => {
  const row = finding === null ? undefined : car.findings[finding];
  if (row === undefined || row.state === 'undecided') return 'failed';
  const change = row.change === null ? undefined : car.changes[row.change];
  return change?.state === 'asked' ? 'failed, change asked' : 'failed, decided';
};

/** Is anything of this planned stopgap still on the car? One that was never placed is out. */
const inPlace = (car: Car, stopgap: string): Refusal | null => {
  for (const id in car.stopgaps) {
    const row = car.stopgaps[id];
    if (row?.stopgap === stopgap && row.removed < row.placed) return stillPlaced(id, row);
  }
  return null;
};

export const stillPlaced = (id: string, row: StopgapRow): Refusal =>
  refuse('stopgap-in-place', {
    stopgap: id,
    left: row.placed - row.removed,
    placed: row.placed,
    what: row.what,
  });

export const hasPhoto = (car: Car, of: StateKey, slot: string): boolean =>
  Object.values(car.photos).some((photo) => photo.of === of && photo.slot === slot);
