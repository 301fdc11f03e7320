/** Which work allows an act on a joint (D17): a running operation that names it, or a job that follows from its state. */
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import type { Level } from '@/lib/domain/base/vocabulary';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { levelOf, strongestRemedy } from './joint';
import type { Doubt, RunRef } from './joint-rows';
import type { Car } from './rows';

const TIGHTENING = ['snug', 'final', 'retorque'];
const VERBS: Readonly<Record<JointAct, readonly string[]>> = {
  snug: TIGHTENING,
  final: ['final', 'retorque'],
  recheck: ['recheck', 'retorque', 'final'],
};
export type JointAct = 'snug' | 'final' | 'recheck';

/** The running operation whose body names the joint for this act, if any. */
export const runningWork = (car: Car, joint: CompiledJoint, act: JointAct): RunRef | null => {
  for (const { operation, verb } of joint.broughtBy) {
    const row = car.operations[operation];
    if (row?.status === 'running' && VERBS[act].includes(verb)) return { operation, run: row.run };
  }
  return null;
};

/** The operations whose body would allow this act, running or not. */
export const workNaming = (joint: CompiledJoint, act: JointAct): readonly string[] => [
  ...new Set(
    joint.broughtBy.filter(({ verb }) => VERBS[act].includes(verb)).map(({ operation }) => operation),
  ),
];

/** The running operation whose body asks that the joint be opened. */
export const runningOpening = (car: Car, joint: CompiledJoint): RunRef | null => {
  for (const { operation, verb } of joint.broughtBy) {
    const row = car.operations[operation];
    if (row?.status === 'running' && verb === 'open') return { operation, run: row.run };
  }
  return null;
};

/** How far finished work had brought it: what an opened joint must be restored to. */
export const expectedLevel = (car: Car, joint: CompiledJoint): Level => {
  let expected: Level = 'open';
  for (const { operation, verb, level } of joint.broughtBy) {
    const row = car.operations[operation];
    const wasDone = row !== undefined && (row.status === 'finished' || row.run > 1);
    if (!wasDone || !TIGHTENING.includes(verb)) continue;
    if (isAtLevel(level, expected)) expected = level;
  }
  return wasReopened(car, joint) ? 'open' : expected;
};

/** The last finished operation that names it left it open on purpose (a body lifted off, to go on again later). */
const wasReopened = (car: Car, joint: CompiledJoint): boolean => {
  const row = car.joints[joint.stateKey];
  const run = row?.opened?.run ?? null;
  if (run === null || levelOf(row) !== 'open') return false;
  const tightensToo = joint.broughtBy.some(
    ({ operation, verb }) => operation === run.operation && TIGHTENING.includes(verb),
  );
  return !tightensToo;
};

export type JointJob = 'restore' | 'retorque' | 'recheck' | 'renew';
const NO_JOB: readonly JointJob[] = [];

/** Jobs that a joint's own state makes: bring it back, try it again, torque it again, renew it. */
export const jobsOn = (car: Car, joint: CompiledJoint, doubts: readonly Doubt[]): readonly JointJob[] => {
  const level = levelOf(car.joints[joint.stateKey]);
  // No work promises more than final, so that most joints are settled here.
  const isShort = !isAtLevel(level, 'final') && !isAtLevel(level, expectedLevel(car, joint));
  const remedy = strongestRemedy(doubts);
  if (!isShort && remedy === null) return NO_JOB;
  return [...(isShort ? (['restore'] as const) : []), ...(remedy === null ? [] : [remedy])];
};

/** Is there a job for this act besides running operations? An open finding about the joint is one too. */
export const allowsByJob = (
  car: Car,
  joint: CompiledJoint,
  act: JointAct,
  doubts: readonly Doubt[],
): boolean => {
  const jobs = jobsOn(car, joint, doubts);
  const hasFinding = Object.values(car.findings).some(
    (finding) =>
      finding.state !== 'closed' && finding.about.kind === 'joint' && finding.about.key === joint.stateKey,
  );
  if (hasFinding) return true;
  if (act === 'recheck') return jobs.includes('recheck');
  if (act === 'final' && (jobs.includes('retorque') || jobs.includes('recheck'))) return true;
  return jobs.includes('restore') && (act === 'snug' || isAtLevel(expectedLevel(car, joint), 'final'));
};
