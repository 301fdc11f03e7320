/** A joint's line: its jobs, where it is signed, and what stands in the way of all of them. */
import { refuse } from '@/lib/domain/base/refusals';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { Job } from '@/lib/domain/assess';
import { levelOf } from '@/lib/domain/car/joint';
import type { ClaimType } from '@/lib/domain/commands';
import { unfinished } from '@/lib/domain/unmet';
import type { RowView } from '@/lib/wire/views/car';
import type { ActRef } from '@/lib/wire/views/desk';
import type { RefusalLine } from '@/lib/wire/views/said-line';
import { lineOf, waitLines } from './lines';
import type { Seen } from './seen';
import type { Acts } from './who-may';

export const sheetOf = ({ car }: Pick<Seen, 'car'>, joint: StateKey): string =>
  `/cars/${encodeURIComponent(car.id)}/joints/${encodeURIComponent(joint)}`;

export interface JointNext {
  readonly acts: readonly ActRef[];
  readonly waits: readonly RefusalLine[];
  readonly open: string;
  readonly sheet: string | null;
}

const JOINT_JOBS: readonly Job['kind'][] = ['renew', 'restore', 'retorque', 'recheck', 'verify'];

/** Final is signed on the joint's own sheet; everything else here. */
export const jointNext = (seen: Seen, acts: Acts, key: StateKey): JointNext => {
  const jobs = seen.assessment.jobs.filter((job) => job.key === key && JOINT_JOBS.includes(job.kind));
  const allowed = new Set(jobs.flatMap((job) => job.allows));
  const work = jobs.length === 0 ? byRunningWork(seen, key) : null;
  for (const type of work?.allows ?? []) allowed.add(type);
  const isOpen = levelOf(seen.car.joints[key]) === 'open';
  const here = [...allowed].filter((type) => type !== 'final-joint' && (type !== 'snug-joint' || isOpen));
  const waits = waitLines(
    seen,
    jobs.flatMap((job) => job.waitsFor),
  );
  return {
    acts: acts.all(here, 'joint', key),
    waits: [...waits, ...(work?.waits ?? [])],
    open: nextWord(jobs, allowed.has('final-joint'), isOpen),
    sheet: jobs.length > 0 || allowed.size > 0 ? sheetOf(seen, key) : null,
  };
};

const nextWord = (jobs: readonly Job[], toFinal: boolean, isOpen: boolean): RowView['open'] => {
  const has = (kind: Job['kind']): boolean => jobs.some((job) => job.kind === kind);
  if (has('renew')) return 'Renew';
  if (has('restore')) return isOpen || !toFinal ? 'Restore' : 'Sign final';
  if (has('retorque')) return 'Torque again';
  if (has('recheck')) return 'Try again';
  if (has('verify')) return 'Verify';
  if (toFinal) return isOpen ? 'Fit it' : 'Sign final';
  return 'See it';
};

interface Work {
  readonly allows: readonly ClaimType[];
  readonly waits: readonly RefusalLine[];
}

/** No job of its own: it waits for the operation that takes it further. */
const byRunningWork = (seen: Seen, key: StateKey): Work => {
  const joint = seen.plan.joints.get(key);
  const open = (joint?.broughtBy ?? []).filter(
    ({ operation }) => seen.car.operations[operation]?.status !== 'finished',
  );
  const running = open.filter(({ operation }) => seen.car.operations[operation]?.status === 'running');
  if (running.length > 0)
    return {
      allows: running.some(({ verb }) => verb !== 'snug') ? ['snug-joint', 'final-joint'] : ['snug-joint'],
      waits: [],
    };
  const [next] = open;
  const refusal = next === undefined ? null : unfinished(seen.car, next.operation);
  const said =
    refusal ??
    (next === undefined
      ? null
      : refuse('operation-unfinished', { operation: next.operation, status: 'not started' }));
  return { allows: [], waits: said === null ? [] : [lineOf(seen, said)] };
};
