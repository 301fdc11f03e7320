/** What could be done next on a car, most pressing first: finish what runs, mend what is open, start what is ready. */
import type { Assessment, Job } from '@/lib/domain/assess';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { CarClaim } from '@/lib/domain/commands';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { levelOf } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import { asideFor } from '@/lib/domain/car/hardware';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import type { BodyRequirement, CompiledJoint, CompiledPlan } from '@/lib/domain/plan/compiled';
import { isLeftFor } from '@/lib/domain/shop/lot-trace';
import type { Shop } from '@/lib/domain/shop/rows';
import { evidenceFor, reapplyingTool, valuesFor } from './evidence';
import type { Bench, EvidenceOptions } from './evidence';

export interface Act {
  readonly by: string;
  readonly claim: CarClaim;
}

/** Everything worth trying now, in order. Each is tried by everybody: the rules say who may. */
export const nextActs = (
  at: Site,
  assessment: Assessment,
  /** Start work of later stages too; a shop does so only when nothing else is to be done. */
  ahead: boolean,
): readonly Act[] => {
  const { plan, car, shop } = at;
  const { jobs } = assessment;
  const running = jobs.filter((job) => job.kind === 'operation' && job.state === 'running');
  const others = jobs.filter((job) => job.kind !== 'operation' && job.state !== 'waiting');
  const idle = jobs.filter((job) => job.kind === 'operation' && job.state === 'paused');
  const ready = jobs.filter(
    (job) => job.kind === 'operation' && job.state === 'ready' && (ahead || job.due <= car.stage),
  );
  const next = plan.stages[car.stage + 1];
  const onward: readonly CarClaim[] =
    assessment.gate.unmet.length === 0 && next !== undefined
      ? [{ type: 'advance-car', car: car.id, to: next.key }]
      : [];
  return [
    ...others.flatMap((job) => jobClaims(at, job)),
    ...running.flatMap((job) => operationClaims(at, job)),
    ...onward,
    ...idle.map((job): CarClaim => ({ type: 'resume-operation', car: car.id, operation: job.key })),
    ...ready.map((job): CarClaim => ({ type: 'start-operation', car: car.id, operation: job.key })),
    ...missingParts(at, jobs),
    ...undecidedOptions(at),
    ...(ahead ? repeatable(at, jobs) : []),
  ].flatMap((claim) => Object.keys(shop.people).map((by) => ({ by, claim })));
};

export interface Site {
  readonly plan: CompiledPlan;
  readonly car: Car;
  readonly shop: Shop;
  /** The day and the time of it. */
  readonly day: string;
  readonly now: string;
}

const benchOf = ({ shop, day, now }: Site): Bench => ({
  tools: Object.values(shop.tools),
  adapters: Object.values(shop.adapters),
  day,
  judgedAt: now,
});

/** What would settle this job, the better claim first; only one of them will be accepted. */
export const jobClaims = (at: Site, job: Job): readonly CarClaim[] => {
  const car = at.car.id;
  switch (job.kind) {
    case 'verify':
      return verifying(at, job.key);
    case 'restore':
    case 'retorque':
      return tightening(at, job.key);
    case 'recheck':
      return rechecking(at, job.key);
    case 'renew':
      return [{ type: 'open-joint', car, joint: job.key }];
    case 'check':
      return checking(at, job.key);
    case 'finding':
      return [{ type: 'close-finding', car, finding: job.key }];
    case 'decide':
      return [{ type: 'decide-finding', car, finding: job.key, disposition: 'rework', reason: 'put right' }];
    case 'change':
      return [{ type: 'decide-change', car, change: job.key, approve: true }];
    case 'stopgap':
      // A planned one waits for the work that takes it out.
      return at.car.stopgaps[job.key]?.stopgap === null
        ? [{ type: 'remove-stopgap', car, stopgap: job.key }]
        : [];
    case 'operation':
      return [];
  }
};

/** The body's lines in their order, another pair of hands where it takes two, and then the finish. */
const operationClaims = (at: Site, job: Job): readonly CarClaim[] => {
  const operation = at.plan.operations.get(job.key);
  const row = at.car.operations[job.key];
  if (operation === undefined || row === undefined) return [];
  const car = at.car.id;
  const joining: readonly CarClaim[] =
    row.crew.length < operation.crew ? [{ type: 'join-operation', car, operation: job.key }] : [];
  return [
    ...joining,
    ...operation.body.flatMap((line) => lineClaims(at, job, line)),
    { type: 'finish-operation', car, operation: job.key },
  ];
};

/** Which run of which operation is at work. */
type Running = Pick<Job, 'key' | 'number'>;

/** What would settle this line of the body, the better claim first; none where nothing is left to do. */
export const lineClaims = (at: Site, job: Running, line: BodyRequirement): readonly CarClaim[] => {
  const car = at.car.id;
  switch (line.verb) {
    case 'snug':
      return levelOf(at.car.joints[line.joint]) === 'open' ? [snugging(at, line.joint)] : [];
    case 'final':
      return isSettled(at, line.joint) ? [] : tightening(at, line.joint);
    case 'retorque':
      return isTorquedInRun(at, job, line.joint) ? [] : tightening(at, line.joint);
    case 'recheck':
      return isRecheckedInRun(at, job, line.joint) ? [] : rechecking(at, line.joint);
    case 'open':
      return isOpenedInRun(at, job, line.joint) ? [] : [{ type: 'open-joint', car, joint: line.joint }];
    case 'check':
      return checking(at, line.check);
    case 'out':
      return Object.values(at.car.stopgaps).some(
        (row) => row.stopgap === line.stopgap && row.removed < row.placed,
      )
        ? [{ type: 'remove-stopgap', car, stopgap: line.stopgap }]
        : [];
    case 'fit':
      return fitting(at, line.part);
    case 'photo':
      return Object.values(at.car.photos).some((photo) => photo.of === job.key && photo.slot === line.slot)
        ? []
        : [{ type: 'add-photo', car, of: job.key, slot: line.slot, hash: `demo-${job.key}-${line.slot}` }];
    case 'set':
      return at.car.conditions[line.condition]?.value !== true && isAskedLater(at, job, line.condition)
        ? [{ type: 'set-condition', car, condition: line.condition, reason: 'so from here on' }]
        : [];
    case 'place':
    case 'clear':
      return [];
  }
};

/** Finishing sets a condition; said sooner only where the rest of this very work needs it (a body torqued to its mounts). */
const isAskedLater = ({ plan }: Site, job: Running, condition: string): boolean =>
  (plan.operations.get(job.key)?.body ?? []).some(
    (line) =>
      'joint' in line &&
      plan.joints
        .get(line.joint)
        ?.finalNeeds.some((need) => need.kind === 'condition' && need.condition === condition),
  );

const fitting = ({ car }: Site, part: string): readonly CarClaim[] => {
  const state = car.parts[part]?.state;
  if (state === 'fitted') return [];
  return [{ type: state === 'present' ? 'fit-part' : 'receive-part', car: car.id, part }];
};

/** Final, and nothing stored against it; what a tool or a lot casts on it the rules will say. */
const isSettled = ({ car }: Site, joint: string): boolean => {
  const row = car.joints[joint];
  return isAtLevel(levelOf(row), 'final') && row?.doubts.length === 0;
};

const isThisRun = (job: Running, run: { operation: string; run: number } | null | undefined): boolean =>
  run?.operation === job.key && run.run === job.number;

const isTorquedInRun = ({ car }: Site, job: Running, joint: string): boolean =>
  car.joints[joint]?.marks.some(
    (mark) => mark.level === 'final' && !mark.struck && isThisRun(job, mark.run),
  ) ?? false;

const isRecheckedInRun = ({ car }: Site, job: Running, joint: string): boolean =>
  car.joints[joint]?.rechecks.some((each) => !each.struck && isThisRun(job, each.run)) ?? false;

const isOpenedInRun = ({ car }: Site, job: Running, joint: string): boolean =>
  isThisRun(job, car.joints[joint]?.opened?.run);

/** Final, with the evidence that a good tool gives, and snug for a joint that can't be final yet. */
export const tightening = (at: Site, key: string, options: EvidenceOptions = {}): readonly CarClaim[] => {
  const { plan, car } = at;
  const joint = plan.joints.get(key);
  if (joint === undefined) return [];
  const behindAdapter = plan.document.joints?.[joint.key]?.adapter === true;
  const evidence = evidenceFor(joint, benchOf(at), { behindAdapter, salt: car.id, ...options });
  const hardware = lotsFor(at, joint);
  const with_ = hardware.length === 0 ? {} : { hardware };
  const named = { car: car.id, joint: key, ...with_ };
  return [
    ...(evidence === null ? [] : [{ type: 'final-joint' as const, ...named, ...evidence }]),
    ...(levelOf(car.joints[key]) === 'open' ? [{ type: 'snug-joint' as const, ...named }] : []),
  ];
};

/** Run up, with what goes in. */
export const snugging = (at: Site, key: string): CarClaim => {
  const joint = at.plan.joints.get(key);
  const hardware = joint === undefined ? [] : lotsFor(at, joint);
  return { type: 'snug-joint', car: at.car.id, joint: key, ...(hardware.length === 0 ? {} : { hardware }) };
};

/** Where the plan asks for the lot, what goes in is told: what came off its own donor and is left, else the newest good one. */
const lotsFor = ({ plan, car, shop, day, now }: Site, joint: CompiledJoint): readonly FittedClaim[] =>
  joint.hardware.flatMap(({ item, reuse }): readonly FittedClaim[] => {
    if (plan.document.items?.[item]?.trace !== 'lot') return [];
    const isThere = Object.values(car.joints[joint.stateKey]?.fasteners ?? {}).some(
      (fastener) => fastener[item] !== undefined,
    );
    if (isThere && !reuse.rule.startsWith('once')) return [];
    const lots = Object.values(shop.lots).filter(
      (each) => each.item === item && each.quarantined === null && each.receivedAt <= now,
    );
    const own = lots.find((each) => asideFor(each) === car.id && isLeftFor(plan, car, each, shop));
    const lot =
      own ??
      lots.findLast((each) => each.donor === undefined && (each.expires === null || day <= each.expires));
    return lot === undefined ? [] : [{ item, lot: lot.id }];
  });

const withTool = (id: string | null): { tool?: string } => (id === null ? {} : { tool: id });

const rechecking = (at: Site, key: string): readonly CarClaim[] => {
  const joint = at.plan.joints.get(key);
  if (joint === undefined) return [];
  const tool = joint.method === 'firm' ? null : reapplyingTool(joint, benchOf(at), at.car.joints[key]?.tool);
  return [{ type: 'recheck-joint', car: at.car.id, joint: key, ...withTool(tool) }];
};

export const verifying = (at: Site, key: string): readonly CarClaim[] => {
  const joint = at.plan.joints.get(key);
  if (joint === undefined) return [];
  const method = joint.verify ?? 'witnessed';
  const tool =
    method === 're-applied' && joint.method !== 'firm'
      ? reapplyingTool(joint, benchOf(at), at.car.joints[key]?.tool)
      : null;
  return [{ type: 'verify-joint', car: at.car.id, joint: key, method, ...withTool(tool) }];
};

const checking = ({ plan, car }: Site, key: string): readonly CarClaim[] => {
  const check = plan.checks.get(key);
  const status = car.checks[key]?.status;
  if (check === undefined || status === 'clear' || status === 'conceded') return [];
  return [
    { type: 'pass-check', car: car.id, check: key, values: valuesFor(check, car.id) },
    ...(check.holdsMs > 0 && status !== 'running'
      ? [{ type: 'begin-check' as const, car: car.id, check: key }]
      : []),
  ];
};

/** Parts that some job waits for, or that were robbed and are owed. */
const missingParts = ({ car }: Site, jobs: readonly Job[]): readonly CarClaim[] =>
  jobs
    .flatMap((job) => job.waitsFor)
    .flatMap((refusal: Refusal) => (refusal.code === 'part-absent' ? [refusal.details.part] : []))
    .map((part) => ({ type: 'receive-part', car: car.id, part }));

const undecidedOptions = ({ plan, car }: Site): readonly CarClaim[] =>
  Object.entries(plan.document.options ?? {})
    .filter(([option]) => car.options[option] === undefined)
    .map(([option, entry]) => ({
      type: 'choose-option',
      car: car.id,
      option,
      choice: entry.usual ?? entry.choices[0] ?? '',
    }));

/** Work that may be run at will, where something waits for the condition that it sets. */
const repeatable = ({ plan, car }: Site, jobs: readonly Job[]): readonly CarClaim[] =>
  [...new Set(jobs.flatMap((job) => job.waitsFor))]
    .flatMap((refusal) => (refusal.code === 'condition-not-true' ? [refusal.details.condition] : []))
    .flatMap((condition) => plan.setters.get(condition) ?? [])
    .filter((operation) => operation.repeatable && car.operations[operation.stateKey]?.status === 'finished')
    .map((operation) => ({ type: 'start-operation', car: car.id, operation: operation.stateKey }));
