/** Which jobs of a car are this person's, why, and which comes first. Pure. */
import type { Assessment, Job } from '@/lib/domain/assess';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import { qualification } from '@/lib/domain/decide/case';
import type { Facts } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';

/** In the order in which they come: what one is at, what one began, what one was given, what one's stage asks … */
export const REASONS = ['running', 'begun', 'job', 'stage', 'lead', 'anybody'] as const;
export type Reason = (typeof REASONS)[number];

export interface MyJob {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly job: Job;
  readonly reason: Reason;
  /** What it waits for, for this person. */
  readonly waits: readonly Refusal[];
}

interface OnFloor {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly assessment: Assessment;
}

/** All that is this person's on the floor, what comes first first. */
export const myJobs = (floor: readonly OnFloor[], facts: Facts, me: PersonId): readonly MyJob[] =>
  floor
    .flatMap(({ car, plan, assessment }) =>
      assessment.jobs.flatMap((job): readonly MyJob[] => {
        const reason = reasonFor({ car, plan, job, facts, me });
        if (reason === null) return [];
        const mine = { car, plan, job, reason, waits: waitsOf(facts, job, me) };
        return isShown(mine) ? [mine] : [];
      }),
    )
    .map((each, index) => ({ each, index }))
    .sort((a, b) => byOrder(a.each, b.each) || a.index - b.index)
    .map(({ each }) => each);

interface Asked {
  readonly car: Car;
  readonly plan: CompiledPlan;
  readonly job: Job;
  readonly facts: Facts;
  readonly me: PersonId;
}

const reasonFor = ({ car, plan, job, facts, me }: Asked): Reason | null => {
  const row = job.kind === 'operation' ? car.operations[job.key] : undefined;
  if (row?.status === 'running' && row.present.includes(me)) return 'running';
  if (row?.status === 'paused' && row.crew.includes(me)) return 'begun';
  const given = car.assignments[job.id]?.people;
  if (given?.includes(me) === true) return 'job';
  // Second eyes have a page of their own, where nobody is offered who may not.
  if (job.kind === 'verify' || (given !== undefined && given.length > 0)) return null;
  if (job.kind === 'decide' || job.kind === 'change')
    return facts.people[me]?.roles.includes('lead') === true ? 'lead' : null;
  // Others are on it, and enough of them.
  const crew = plan.operations.get(job.key)?.crew ?? 1;
  if (row?.status === 'running' && row.present.length >= crew) return null;
  const stage = car.assignments[`stage:${plan.stages[job.due]?.key ?? ''}`]?.people ?? [];
  const isAble = (person: PersonId): boolean => qualification({ facts }, person, job.who).length === 0;
  if (!isAble(me)) return null;
  if (stage.includes(me)) return 'stage';
  // Nobody of the stage's crew can: it falls to a lead who can.
  const isLeads = facts.people[me]?.roles.includes('lead') === true && !stage.some(isAble);
  if (isLeads && stage.length > 0) return 'lead';
  return stage.length === 0 && job.due <= car.stage ? 'anybody' : null;
};

/** A lead's jobs name a role, the others a qualification. */
const waitsOf = (facts: Facts, job: Job, me: PersonId): readonly Refusal[] =>
  job.kind === 'decide' || job.kind === 'change'
    ? job.waitsFor
    : [...qualification({ facts }, me, job.who), ...job.waitsFor];

export const isWaiting = ({ job, waits }: Pick<MyJob, 'job' | 'waits'>): boolean =>
  job.state !== 'running' && waits.length > 0;

/** What waits is shown where it is one's own or asked by the gate before the car; the rest comes in its time. */
const isShown = (mine: MyJob): boolean =>
  !isWaiting(mine) ||
  (mine.reason !== 'anybody' && (mine.reason !== 'stage' || mine.job.due <= mine.car.stage));

const byOrder = (a: MyJob, b: MyJob): number =>
  atHand(a) - atHand(b) ||
  Number(isWaiting(a)) - Number(isWaiting(b)) ||
  REASONS.indexOf(a.reason) - REASONS.indexOf(b.reason) ||
  gatesAhead(a) - gatesAhead(b);

/** Running work stays first whatever it lacks by now. */
const atHand = ({ reason }: MyJob): number => (reason === 'running' ? 0 : 1);

const gatesAhead = ({ job, car }: MyJob): number => Math.max(0, job.due - car.stage);
