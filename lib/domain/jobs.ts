/**
 * Jobs: what a person can be given. Their ids are stable, `kind:key@position:number`, where the number is the run,
 * the cycle or the round; assignments, drafts and links hang on them (D32).
 */
import type { Refusal } from './base/refusals';
import { isAtLevel } from './base/vocabulary';
import type { Key, PersonId } from './base/vocabulary';
import type { ClaimType } from './commands';
import { doubtsOf, levelOf } from './car/joint';
import type { Car } from './car/rows';
import { jobsOn } from './car/work';
import { undecided } from './decide/case';
import type { Case } from './decide/case';
import { closingRefusals } from './decide/findings';
import { readiness } from './decide/operations';
import type { Facts } from './facts';
import type { CompiledOperation, CompiledPlan } from './plan/compiled';
import { unmet } from './unmet';

export const JOB_KINDS = [
  'operation',
  'restore',
  'renew',
  'retorque',
  'recheck',
  'verify',
  'check',
  'stopgap',
  'decide',
  'finding',
  'change',
] as const;
export type JobKind = (typeof JOB_KINDS)[number];

export interface Job {
  readonly id: string;
  readonly kind: JobKind;
  readonly key: string;
  readonly number: number;
  /** Index of the stage by whose gate it is asked. */
  readonly due: number;
  readonly state: 'ready' | 'waiting' | 'running' | 'paused';
  /** What a waiting job waits for; a running one shows here what is no longer met (D28). */
  readonly waitsFor: readonly Refusal[];
  readonly who: Key | null;
  /** Whom it was given to; else those who were given its stage. */
  readonly people: readonly PersonId[];
  /** The commands that its form offers. */
  readonly allows: readonly ClaimType[];
}

const NOTHING: readonly Refusal[] = [];

export const jobsOf = (plan: CompiledPlan, car: Car, facts: Facts): readonly Job[] => {
  const at: Case = { command: '', facts, car, plan };
  const found: Job[] = [];
  for (const operation of plan.operations.values()) {
    const job = operationJob(at, operation);
    if (job !== null) found.push(job);
  }
  jointJobs(at, found);
  otherJobs(at, found);
  return isEmpty(car.assignments)
    ? found
    : found.map((job) => ({ ...job, people: peopleOf(plan, car, job) }));
};

const NOBODY: readonly PersonId[] = [];

const peopleOf = (plan: CompiledPlan, car: Car, job: Job): readonly PersonId[] =>
  car.assignments[job.id]?.people ??
  car.assignments[`stage:${plan.stages[job.due]?.key ?? ''}`]?.people ??
  NOBODY;

const isEmpty = (map: object): boolean => Object.keys(map).length === 0;

const OPERATION_ACTS: Readonly<Record<Job['state'], readonly ClaimType[]>> = {
  ready: ['start-operation'],
  waiting: ['start-operation'],
  running: ['finish-operation', 'pause-operation', 'join-operation', 'take-over-operation'],
  paused: ['resume-operation', 'take-over-operation'],
};

const operationJob = (at: Case, operation: CompiledOperation): Job | null => {
  const row = at.car.operations[operation.stateKey];
  if (row?.status === 'finished') return null;
  const needs = readiness(at, operation);
  const waitsFor = operation.undecided.length === 0 ? needs : [...undecided(at, operation), ...needs];
  const state =
    row?.status === 'running' || row?.status === 'paused'
      ? row.status
      : waitsFor.length > 0
        ? 'waiting'
        : 'ready';
  const number = row?.run ?? 1;
  return {
    id: `operation:${operation.stateKey}:${String(number)}`,
    kind: 'operation',
    key: operation.stateKey,
    number,
    due: operation.due,
    state,
    waitsFor,
    who: operation.who,
    people: NOBODY,
    allows: OPERATION_ACTS[state],
  };
};

/** Only joints that somebody has touched can have jobs of their own. */
const jointJobs = ({ plan, car, facts }: Case, found: Job[]): void => {
  for (const joint of plan.joints.values()) {
    const key = joint.stateKey;
    const row = car.joints[key];
    if (row === undefined) continue;
    const level = levelOf(row);
    const doubts = doubtsOf(row, facts);
    const base = { key, number: row.cycle, due: joint.due };
    for (const kind of jobsOn(car, joint, doubts)) {
      const waitsFor =
        kind === 'restore' || kind === 'retorque' ? unmet(plan, car, facts, joint.finalNeeds) : NOTHING;
      found.push({
        ...base,
        id: `${kind}:${key}:${String(row.cycle)}`,
        kind,
        state: waitsFor.length > 0 ? 'waiting' : 'ready',
        waitsFor,
        who: joint.who,
        people: NOBODY,
        allows:
          kind === 'renew'
            ? ['open-joint']
            : kind === 'recheck'
              ? ['recheck-joint', 'report-disturbed', 'final-joint']
              : ['snug-joint', 'final-joint'],
      });
    }
    if (level === 'final' && doubts.length === 0 && !isAtLevel(level, joint.dueLevel))
      found.push({
        ...base,
        id: `verify:${key}:${String(row.cycle)}`,
        kind: 'verify',
        state: 'ready',
        waitsFor: NOTHING,
        who: joint.verifier,
        people: NOBODY,
        allows: ['verify-joint', 'reject-joint'],
      });
  }
};

const otherJobs = (at: Case, found: Job[]): void => {
  const { plan, car } = at;
  for (const key in car.checks) {
    const row = car.checks[key];
    const check = plan.checks.get(key);
    if (row === undefined || check === undefined || row.status === 'clear' || row.status === 'conceded')
      continue;
    const open = car.findings[row.finding ?? ''];
    // While its finding is undecided there is nothing to look at again.
    if (row.status === 'failed' && open?.state === 'undecided') continue;
    const number = row.status === 'failed' ? row.round + 1 : row.round;
    found.push({
      id: `check:${key}:${String(number)}`,
      kind: 'check',
      key,
      number,
      due: check.due,
      state: row.status === 'running' ? 'running' : 'ready',
      waitsFor: NOTHING,
      who: check.who,
      people: NOBODY,
      allows:
        check.holdsMs > 0 && row.status !== 'running'
          ? ['begin-check', 'fail-check']
          : ['pass-check', 'fail-check'],
    });
  }
  for (const [key, row] of Object.entries(car.stopgaps))
    if (row.removed < row.placed)
      found.push(simple('stopgap', key, row.removed + 1, row.outBy, NOTHING, null, ['remove-stopgap']));
  for (const [key, row] of Object.entries(car.findings)) {
    if (row.state === 'undecided')
      found.push(simple('decide', key, 1, row.due, NOTHING, 'lead', ['decide-finding']));
    if (row.state === 'decided')
      found.push(
        simple('finding', key, 1, row.workDue, closingRefusals(at, key, row), null, ['close-finding']),
      );
  }
  for (const [key, row] of Object.entries(car.changes))
    if (row.state === 'asked')
      found.push(simple('change', key, 1, row.due, NOTHING, 'lead', ['decide-change']));
};

const simple = (
  kind: JobKind,
  key: string,
  number: number,
  due: number,
  waitsFor: readonly Refusal[],
  who: Key | null,
  allows: readonly ClaimType[],
): Job => ({
  id: `${kind}:${key}:${String(number)}`,
  kind,
  key,
  number,
  due,
  state: waitsFor.length > 0 ? 'waiting' : 'ready',
  waitsFor,
  who,
  people: NOBODY,
  allows,
});
