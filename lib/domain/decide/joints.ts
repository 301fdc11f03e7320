/** Snug and final: the two assurances that tighten a joint. */
import { compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import { fitHardware } from '@/lib/domain/car/hardware';
import type { FittedClaim } from '@/lib/domain/car/hardware';
import { UNTOUCHED_JOINT, doubtsOf, levelOf, toExactText } from '@/lib/domain/car/joint';
import type { Doubt, JointRow, Mark, RunRef } from '@/lib/domain/car/joint-rows';
import { allowsByJob, runningWork, workNaming } from '@/lib/domain/car/work';
import type { JointAct } from '@/lib/domain/car/work';
import type { CarPayload } from '@/lib/domain/events';
import type { CompiledJoint } from '@/lib/domain/plan/compiled';
import { inBox } from '@/lib/domain/shop/kit';
import { drawnOf } from '@/lib/domain/shop/stock';
import { judgeEvidence } from '@/lib/domain/torque/evidence';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import { unmet } from '@/lib/domain/unmet';
import { holdsOnWork, lotFactsOf, qualification, signature, undecided, unless } from './case';
import { lotRefusalsOf, namedByBox } from './kits';
import type { CarClaimOf, Case, Decision } from './case';

export interface JointCase extends Case {
  readonly joint: CompiledJoint;
  readonly row: JointRow;
  readonly doubts: readonly Doubt[];
}

export const jointCase = (at: Case, joint: CompiledJoint): JointCase => {
  const row = at.car.joints[joint.stateKey];
  return { ...at, joint, row: row ?? UNTOUCHED_JOINT, doubts: doubtsOf(row, at.facts) };
};

export const staleCycle = ({ joint, row }: JointCase, named: number | undefined): readonly Refusal[] =>
  named === undefined || named === row.cycle
    ? []
    : [refuse('stale-cycle', { joint: joint.stateKey, named, current: row.cycle })];

/** The running operation it belongs to, or null where a job of its own allows it. */
export const workFor = (
  at: JointCase,
  act: JointAct,
): { run: RunRef | null; refusals: readonly Refusal[] } => {
  const run = runningWork(at.car, at.joint, act);
  if (run !== null || allowsByJob(at.car, at.joint, act, at.doubts)) return { run, refusals: [] };
  return {
    run: null,
    refusals: [
      refuse('no-work-names-joint', { joint: at.joint.stateKey, act, operations: workNaming(at.joint, act) }),
    ],
  };
};

/** What stands against touching the joint at all: options, holds, who it is. */
const common = (at: JointCase): readonly Refusal[] => [
  ...undecided(at, at.joint),
  ...holdsOnWork(at, at.joint.stateKey),
  ...qualification(at, at.facts.actor, at.joint.who),
];

const fit = (
  at: JointCase,
  claimed: readonly FittedClaim[] | undefined,
  run: RunRef | null,
): ReturnType<typeof fitHardware> => {
  const isLead = at.facts.people[at.facts.actor]?.roles.includes('lead') ?? false;
  const facts = { ...lotFactsOf(at), actorIsLead: isLead };
  const fitting = fitHardware(at.plan, at.joint, at.row, claimed ?? [], facts);
  const box = run === null ? [] : inBox(at.car, run.operation);
  if (box.length === 0) return fitting;
  // What comes out of a box with one lot of it needs no word about the lot.
  const unsaid = drawnOf(fitting.taken).filter(({ lot }) => lot === null);
  const named = namedByBox(box, unsaid);
  const boxLots = new Map(named.flatMap(({ item, lot }) => (lot === null ? [] : [[item, lot] as const])));
  if (boxLots.size === 0) return fitting;
  const tied = fitHardware(at.plan, at.joint, at.row, claimed ?? [], { ...facts, boxLots });
  return { ...tied, refusals: [...tied.refusals, ...lotRefusalsOf(at, named)] };
};

const crewOf = (at: JointCase, run: RunRef | null): readonly string[] =>
  run === null ? [] : (at.car.operations[run.operation]?.crew ?? []);

const fitted = (
  at: JointCase,
  fitting: ReturnType<typeof fitHardware>,
  run: RunRef | null,
): readonly CarPayload[] =>
  Object.keys(fitting.fasteners).length === 0
    ? []
    : [
        {
          type: 'hardware-fitted',
          joint: at.joint.stateKey,
          cycle: at.row.cycle,
          fasteners: fitting.fasteners,
          drawn: drawnOf(fitting.taken),
          ...(run === null || at.car.kits[run.operation] === undefined ? {} : { kit: run.operation }),
        },
      ];

const markOf = (at: JointCase, level: Mark['level'], run: RunRef | null, more: Partial<Mark>): Mark => ({
  level,
  signature: at.command,
  by: at.facts.actor,
  crew: crewOf(at, run),
  at: at.facts.judgedAt,
  run,
  tool: null,
  adapter: null,
  method: null,
  delivered: null,
  extremes: null,
  window: null,
  useOnce: at.joint.useOnce,
  loaded: [],
  cleared: [],
  struck: false,
  ...more,
});

/** Fitted and run up to contact: says nothing of torque, and never satisfies a torque gate. */
export const snug = (at: JointCase, claim: CarClaimOf<'snug-joint'>): Decision => {
  const { joint, row } = at;
  const level = levelOf(row);
  const work = workFor(at, 'snug');
  const fitting = fit(at, claim.hardware, work.run);
  const refusals = [
    ...staleCycle(at, claim.cycle),
    ...(isAtLevel(level, 'snug') ? [refuse('level-already', { joint: joint.stateKey, level })] : []),
    ...common(at),
    ...work.refusals,
    ...fitting.refusals,
  ];
  return unless(refusals, () => [
    ...fitted(at, fitting, work.run),
    {
      type: 'joint-marked',
      joint: joint.stateKey,
      cycle: row.cycle,
      mark: markOf(at, 'snug', work.run, {}),
      doubtsLeft: row.doubts,
      evidence: null,
      toolUse: null,
      signed: signature('snug-joint', joint.stateKey, row.cycle),
    },
  ]);
};

/** Brought to final. In a cycle that is already final this is the retorque: verified falls back to final. */
export const final = (at: JointCase, claim: CarClaimOf<'final-joint'>): Decision => {
  const { joint, row, facts } = at;
  const work = workFor(at, 'final');
  const fitting = fit(at, claim.hardware, work.run);
  const tool = claim.tool === undefined ? null : (facts.tools[claim.tool] ?? null);
  const adapter = claim.adapter === undefined ? null : (facts.adapters[claim.adapter] ?? null);
  const evidence = evidenceOf(claim);
  const judged = judgeEvidence(joint, evidence, { tool, adapter, day: facts.day, judgedAt: facts.judgedAt });
  const refusals = [
    ...staleCycle(at, claim.cycle),
    ...alreadyFinal(at, work.run),
    ...common(at),
    ...work.refusals,
    ...slaves(at),
    ...at.doubts
      .filter((doubt) => doubt.remedy === 'renew')
      .map((doubt) =>
        refuse('doubt-needs-more', { joint: joint.stateKey, remedy: 'renew', because: doubt.because }),
      ),
    ...unmet(at.plan, at.car, facts, joint.finalNeeds),
    ...(claim.tool !== undefined && tool === null
      ? [refuse('unknown-thing', { what: 'tool', key: claim.tool })]
      : []),
    ...(claim.adapter !== undefined && adapter === null
      ? [refuse('unknown-thing', { what: 'adapter', key: claim.adapter })]
      : []),
    ...judged.refusals,
    ...fitting.refusals,
  ];
  return unless(refusals, () => [
    ...fitted(at, fitting, work.run),
    {
      type: 'joint-marked',
      joint: joint.stateKey,
      cycle: row.cycle,
      mark: markOf(at, 'final', work.run, {
        tool: claim.tool ?? null,
        adapter: claim.adapter ?? null,
        delivered:
          judged.delivered === null
            ? null
            : Object.fromEntries(Object.entries(judged.delivered).map(([f, v]) => [f, toExactText(v)])),
        extremes: extremesOf(judged.delivered),
        window: windowOf(joint),
        loaded: joint.loadedBy.filter((condition) => at.car.conditions[condition]?.value === true),
        cleared: row.doubts,
      }),
      doubtsLeft: [],
      evidence: { ...evidence, calibration: tool?.calibrations.at(-1) ?? null },
      toolUse: tool?.cycles === undefined ? null : { tool: tool.id, cycles: joint.passes * joint.fasteners },
      signed: signature('final-joint', joint.stateKey, row.cycle),
    },
  ]);
};

const extremesOf = (delivered: Readonly<Record<string, Exact>> | null): Mark['extremes'] => {
  const [first, ...rest] = Object.values(delivered ?? {});
  if (first === undefined) return null;
  const least = rest.reduce((a, b) => (compare(b, a) < 0 ? b : a), first);
  const most = rest.reduce((a, b) => (compare(b, a) > 0 ? b : a), first);
  return { least: toExactText(least), most: toExactText(most) };
};

const alreadyFinal = (at: JointCase, run: RunRef | null): readonly Refusal[] => {
  const level = levelOf(at.row);
  const isAsked = at.joint.broughtBy.some(
    ({ operation, verb }) => verb === 'retorque' && operation === run?.operation,
  );
  return isAtLevel(level, 'final') && at.doubts.length === 0 && !isAsked
    ? [refuse('level-already', { joint: at.joint.stateKey, level })]
    : [];
};

/** While a slave part or bolt stands in it, it can't pass snug. */
const slaves = ({ joint, car }: JointCase): readonly Refusal[] =>
  Object.entries(car.stopgaps).flatMap(([id, row]) =>
    row.slaveIn.includes(joint.stateKey) && row.removed < row.placed
      ? [refuse('slave-part-in-joint', { joint: joint.stateKey, stopgap: id })]
      : [],
  );

const windowOf = (joint: CompiledJoint): Mark['window'] => {
  if (joint.specification.kind !== 'window' || joint.method === 'sequence') return null;
  const { low, high, unit } = joint.specification.window;
  return {
    low: low === null ? null : toExactText(low),
    high: high === null ? null : toExactText(high),
    unit,
  };
};

const evidenceOf = (claim: CarClaimOf<'final-joint'>): TorqueEvidence => ({
  ...(claim.tool === undefined ? {} : { tool: claim.tool }),
  ...(claim.adapter === undefined ? {} : { adapter: claim.adapter }),
  ...(claim.unit === undefined ? {} : { unit: claim.unit }),
  ...(claim.setting === undefined ? {} : { setting: claim.setting }),
  ...(claim.passes === undefined ? {} : { passes: claim.passes }),
  ...(claim.readings === undefined ? {} : { readings: claim.readings }),
  ...(claim.drags === undefined ? {} : { drags: claim.drags }),
  ...(claim.angles === undefined ? {} : { angles: claim.angles }),
  ...(claim.steps === undefined ? {} : { steps: claim.steps }),
  ...(claim.unitConfirmed === undefined ? {} : { unitConfirmed: claim.unitConfirmed }),
});
