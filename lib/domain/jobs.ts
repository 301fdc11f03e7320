/**
 * Jobs: what a person can be given. Their ids are stable, `kind:key@position:number`, where the number is the run,
 * the cycle or the round; assignments, drafts and links hang on them (D32).
 */
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { isAtLevel } from './base/vocabulary';
import type { Key, PersonId } from './base/vocabulary';
import type { ClaimType } from './commands';
import type { Car, OperationRow, StopgapRow } from './car/rows';
import { jobsOn } from './car/work';
import type { JointJob } from './car/work';
import { undecided } from './decide/case';
import type { Case } from './decide/case';
import { lookRefusals } from './decide/checks';
import { closingRefusals } from './decide/findings';
import { readiness } from './decide/operations';
import type { Facts } from './facts';
import type { CompiledPlan } from './plan/compiled';
import { unmet } from './unmet';
import type { Unsettled, UnsettledJoint, UnsettledOperation } from './unsettled';

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

export const jobsOf = (plan: CompiledPlan, car: Car, facts: Facts, open: Unsettled): readonly Job[] => {
  const at: Case = { command: '', facts, car, plan };
  const found: Job[] = [];
  for (const unfinished of open.operations) found.push(operationJob(at, unfinished));
  jointJobs(at, open.joints, found);
  checkJobs(at, open.checks, found);
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

const SHARED: readonly ClaimType[] = [
  'finish-operation',
  'leave-operation',
  'pause-operation',
  'join-operation',
  'take-over-operation',
];

const operationJob = (at: Case, { operation, row }: UnsettledOperation): Job => {
  const key = operation.stateKey;
  const needs = readiness(at, operation);
  const waitsFor = operation.undecided.length === 0 ? needs : [...undecided(at, operation), ...needs];
  const state =
    row?.status === 'running' || row?.status === 'paused'
      ? row.status
      : waitsFor.length > 0
        ? 'waiting'
        : 'ready';
  const { due, who } = operation;
  // Who is alone on it leaves by pausing it.
  const acts =
    state === 'running' && row !== undefined && row.present.length > 1 ? SHARED : OPERATION_ACTS[state];
  return job('operation', key, row?.run ?? 1, due, state, waitsFor, who, acts);
};

/** Only joints that somebody has touched can have jobs of their own. */
const jointJobs = ({ plan, car, facts }: Case, joints: readonly UnsettledJoint[], found: Job[]): void => {
  for (const { joint, row, doubts } of joints) {
    if (row === undefined) continue;
    const key = joint.stateKey;
    const { level } = row;
    for (const kind of jobsOn(car, joint, doubts)) {
      const asksNeeds = kind === 'restore' || kind === 'retorque';
      const waitsFor = asksNeeds ? unmet(plan, car, facts, joint.finalNeeds) : NOTHING;
      found.push(
        job(kind, key, row.cycle, joint.due, stateOf(waitsFor), waitsFor, joint.who, JOINT_ACTS[kind]),
      );
    }
    if (level === 'final' && doubts.length === 0 && !isAtLevel(level, joint.dueLevel))
      found.push(
        job('verify', key, row.cycle, joint.due, 'ready', NOTHING, joint.verifier, JOINT_ACTS.verify),
      );
  }
};

const checkJobs = (at: Case, checks: Unsettled['checks'], found: Job[]): void => {
  for (const { check, row } of checks) {
    if (row === undefined) continue;
    const isUndecided = at.car.findings[row.finding ?? '']?.state === 'undecided';
    // While its finding is undecided there is nothing to look at again.
    if (row.status === 'failed' && isUndecided) continue;
    const isRunning = row.status === 'running';
    const acts = check.holdsMs > 0 && !isRunning ? CHECK_ACTS.begin : CHECK_ACTS.look;
    const round = row.status === 'failed' ? row.round + 1 : row.round;
    const waitsFor = lookRefusals(at, check, row);
    const state = isRunning ? 'running' : stateOf(waitsFor);
    found.push(job('check', check.stateKey, round, check.due, state, waitsFor, check.who, acts));
  }
};

const otherJobs = (at: Case, found: Job[]): void => {
  const { car } = at;
  for (const [key, row] of Object.entries(car.stopgaps))
    if (row.removed < row.placed) {
      const waitsFor = notOutYet(at, row);
      const acts: readonly ClaimType[] = ['remove-stopgap'];
      found.push(job('stopgap', key, row.removed + 1, row.outBy, stateOf(waitsFor), waitsFor, null, acts));
    }
  for (const [key, row] of Object.entries(car.findings)) {
    if (row.state === 'undecided')
      found.push(job('decide', key, 1, row.due, 'ready', NOTHING, 'lead', ['decide-finding']));
    if (row.state === 'decided') {
      const waitsFor = closingRefusals(at, key, row);
      found.push(job('finding', key, 1, row.workDue, stateOf(waitsFor), waitsFor, null, ['close-finding']));
    }
  }
  for (const [key, row] of Object.entries(car.changes))
    if (row.state === 'asked')
      found.push(job('change', key, 1, row.due, 'ready', NOTHING, 'lead', ['decide-change']));
};

/** What it stands in for goes in with the work that takes it out: before that work runs, it stays. */
const notOutYet = ({ plan, car }: Case, { stopgap }: StopgapRow): readonly Refusal[] => {
  const removers = stopgap === null ? undefined : plan.removers.get(stopgap);
  if (removers === undefined) return NOTHING;
  const isAtHand = removers.some(({ stateKey }) => isUnderWay(car.operations[stateKey]?.status));
  return isAtHand
    ? NOTHING
    : removers.map(({ stateKey }) => refuse('operation-not-running', { operation: stateKey }));
};

const isUnderWay = (status: OperationRow['status'] | undefined): boolean =>
  status === 'running' || status === 'finished';

const TIGHTEN: readonly ClaimType[] = ['snug-joint', 'final-joint'];
const JOINT_ACTS: Readonly<Record<JointJob | 'verify', readonly ClaimType[]>> = {
  restore: TIGHTEN,
  retorque: TIGHTEN,
  recheck: ['recheck-joint', 'report-disturbed', 'final-joint'],
  renew: ['open-joint'],
  verify: ['verify-joint', 'reject-joint'],
};
const CHECK_ACTS: Readonly<Record<'begin' | 'look', readonly ClaimType[]>> = {
  begin: ['begin-check', 'fail-check'],
  look: ['pass-check', 'fail-check'],
};

const stateOf = (waitsFor: readonly Refusal[]): Job['state'] => (waitsFor.length > 0 ? 'waiting' : 'ready');

/** The one place where a job is made, so that all have one shape; `assess` makes hundreds for every car. */
const job = (
  kind: JobKind,
  key: string,
  number: number,
  due: number,
  state: Job['state'],
  waitsFor: readonly Refusal[],
  who: Key | null,
  allows: readonly ClaimType[],
): Job => ({
  id: `${kind}:${key}:${String(number)}`,
  kind,
  key,
  number,
  due,
  state,
  waitsFor,
  who,
  people: NOBODY,
  allows,
});
