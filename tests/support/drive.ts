/**
 * A greedy driver: it looks at what `assess` says and at the plan, and names the acts that would help, best first.
 * Driving on means trying them until one is accepted; where none is, time passes.
 */
import { asideFor } from '@/lib/domain/car/hardware';
import { toNumber } from '@/lib/domain/base/exact';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Assessment, Job } from '@/lib/domain/assess';
import { levelOf } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import type { CarClaim, Claim, Command } from '@/lib/domain/commands';
import { isDoneInRun } from '@/lib/domain/decide/body';
import type {
  CompiledCheck,
  CompiledJoint,
  CompiledOperation,
  CompiledPlan,
} from '@/lib/domain/plan/compiled';
import { toolFitsMethod } from '@/lib/domain/torque/tool';
import type { Tool } from '@/lib/domain/torque/tool';
import { hasPhoto } from '@/lib/domain/unmet';
import { LEAD, OWNER, PEOPLE, TRIP } from './game';
import type { Game } from './game';
import type { Rules } from './rules';

export interface Act {
  readonly by: PersonId;
  readonly claim: Claim;
  readonly override?: Command['override'];
}

const WORKERS: readonly PersonId[] = PEOPLE.filter((each) => each.isQualified && each.id !== LEAD).map(
  ({ id }) => id,
);
const EVERYONE: readonly PersonId[] = [...WORKERS, LEAD, OWNER];

/** A car's one photograph, by a name that a store could keep it under. */
const photoOf = (car: string): string => Buffer.from(car).toString('hex').padEnd(64, '0');

/** What would help this car, best first. In order: no operation is begun before those that the plan names earlier. */
export function* useful(game: Game, rules: Rules, id: string, inOrder: boolean): Generator<Act> {
  const car = game.car(id);
  const plan = game.plan(car);
  const seen = rules.assess(plan, car, game.factsNow());
  yield* moves(plan, car, seen);
  yield* matters(car);
  for (const job of seen.jobs) if (job.kind !== 'operation') yield* forJob(game, plan, car, job);
  yield* restOfCar(game, plan, car, inOrder);
}

function* moves(plan: CompiledPlan, car: Car, seen: Assessment): Generator<Act> {
  if (seen.gate.unmet.length > 0 || car.delivered) return;
  const next = plan.stages[car.stage + 1];
  if (next === undefined) {
    if (seen.looseEnds.length === 0) yield { by: OWNER, claim: { type: 'deliver-car', car: car.id } };
    return;
  }
  yield {
    by: LEAD,
    claim: { type: 'advance-car', car: car.id, to: next.key },
    override: { code: 'room-full', reason: 'it fits' },
  };
}

function* matters(car: Car): Generator<Act> {
  for (const [hold, row] of Object.entries(car.holds))
    if (row.releasedBy === null) yield { by: LEAD, claim: { type: 'release-hold', car: car.id, hold } };
  for (const [change, row] of Object.entries(car.changes)) {
    if (row.state !== 'asked') continue;
    for (const by of [OWNER, LEAD])
      yield { by, claim: { type: 'decide-change', car: car.id, change, approve: true } };
    yield { by: LEAD, claim: { type: 'decide-change', car: car.id, change, approve: false, reason: 'no' } };
  }
}

function* forJob(game: Game, plan: CompiledPlan, car: Car, job: Job): Generator<Act> {
  const joint = plan.joints.get(job.key);
  const check = plan.checks.get(job.key);
  switch (job.kind) {
    case 'decide':
      yield {
        by: LEAD,
        claim: {
          type: 'decide-finding',
          car: car.id,
          finding: job.key,
          disposition: 'rework',
          reason: 'again',
        },
      };
      return;
    case 'finding':
      yield { by: WORKERS[0] ?? LEAD, claim: { type: 'close-finding', car: car.id, finding: job.key } };
      return;
    case 'renew':
      if (joint !== undefined)
        yield { by: WORKERS[0] ?? LEAD, claim: { type: 'open-joint', car: car.id, joint: job.key } };
      return;
    case 'restore':
    case 'retorque':
      if (joint !== undefined) yield* tighten(game, car, joint, WORKERS[0] ?? LEAD);
      return;
    case 'recheck':
      if (joint !== undefined) yield* recheck(game, car, joint);
      return;
    case 'verify':
      if (joint !== undefined) yield* verify(game, car, joint);
      return;
    case 'check':
      if (check !== undefined) yield* look(car, check, WORKERS[0] ?? LEAD);
      return;
    case 'stopgap':
      if (isToBeOut(plan, car, job.key))
        yield { by: WORKERS[0] ?? LEAD, claim: { type: 'remove-stopgap', car: car.id, stopgap: job.key } };
      return;
    case 'operation':
    case 'change':
  }
}

/** Its removing work has begun or is over, it is ad hoc, or its gate is near. */
const isToBeOut = (plan: CompiledPlan, car: Car, id: string): boolean => {
  const row = car.stopgaps[id];
  if (row === undefined) return false;
  if (row.stopgap === null) return true;
  const removers = [...plan.operations.values()].filter((each) =>
    each.body.some((line) => line.verb === 'out' && line.stopgap === row.stopgap),
  );
  return removers.length === 0 || removers.some((each) => car.operations[each.stateKey] !== undefined);
};

function* tighten(game: Game, car: Car, joint: CompiledJoint, by: PersonId): Generator<Act> {
  const hardware = goodHardware(game, car, joint);
  if (levelOf(car.joints[joint.stateKey]) === 'open') {
    yield { by, claim: { type: 'snug-joint', car: car.id, joint: joint.stateKey, hardware } };
    yield { by, claim: { type: 'snug-joint', car: car.id, joint: joint.stateKey } };
  }
  const tool = goodTool(game, joint);
  if (tool === null) {
    yield { by: LEAD, claim: newTool(game) };
    return;
  }
  yield { by, claim: finalClaim(car.id, joint, tool) };
}

function* recheck(game: Game, car: Car, joint: CompiledJoint): Generator<Act> {
  const tool = goodTool(game, joint);
  if (tool === null) yield { by: LEAD, claim: newTool(game) };
  for (const by of WORKERS.slice(0, 2))
    yield {
      by,
      claim: {
        type: 'recheck-joint',
        car: car.id,
        joint: joint.stateKey,
        ...(tool === null || tool === 'none' ? {} : { tool: tool.id }),
      },
    };
}

function* verify(game: Game, car: Car, joint: CompiledJoint): Generator<Act> {
  const method = joint.verify ?? 'seen';
  const tool = goodTool(game, joint);
  if (tool === null) yield { by: LEAD, claim: newTool(game) };
  for (const by of [...EVERYONE].reverse())
    yield {
      by,
      claim: {
        type: 'verify-joint',
        car: car.id,
        joint: joint.stateKey,
        method,
        ...(tool === null || tool === 'none' ? {} : { tool: tool.id }),
      },
    };
}

function* look(car: Car, check: CompiledCheck, by: PersonId): Generator<Act> {
  if (check.holdsMs > 0 && car.checks[check.stateKey]?.status !== 'running') {
    yield { by, claim: { type: 'begin-check', car: car.id, check: check.stateKey } };
    return;
  }
  yield { by, claim: { type: 'pass-check', car: car.id, check: check.stateKey, values: goodValues(check) } };
}

export const goodValues = (check: CompiledCheck): Readonly<Record<string, string>> =>
  Object.fromEntries(
    check.values.map(({ name, limit }) => {
      if (limit.kind === 'statement') return [name, 'yes'];
      const { low, high } = limit.window;
      return [name, String(toNumber(low ?? high ?? { num: 0n, den: 1n }))];
    }),
  );

/** Operations in the plan's order: go on with the first that is not finished. */
function* restOfCar(game: Game, plan: CompiledPlan, car: Car, inOrder: boolean): Generator<Act> {
  for (const [option, entry] of Object.entries(plan.document.options ?? {}))
    if (car.options[option] === undefined)
      yield {
        by: LEAD,
        claim: { type: 'choose-option', car: car.id, option, choice: entry.choices[0] ?? '' },
      };
  for (const part of Object.keys(plan.document.parts ?? {})) {
    const state = car.parts[part]?.state ?? 'absent';
    const by = WORKERS[0] ?? LEAD;
    if (state === 'out')
      yield { by, claim: { type: 'return-parts', car: car.id, trip: TRIP, parts: [{ part, how: 'done' }] } };
    else if (state !== 'present' && state !== 'fitted')
      yield { by, claim: { type: 'receive-part', car: car.id, part, looked: 'true to 0.1' } };
  }
  for (const operation of plan.operations.values()) {
    const row = car.operations[operation.stateKey];
    if (row?.status === 'finished') continue;
    yield* work(game, car, operation);
    if (inOrder) return;
  }
}

function* work(game: Game, car: Car, operation: CompiledOperation): Generator<Act> {
  const named = { car: car.id, operation: operation.stateKey };
  const row = car.operations[operation.stateKey];
  const by = row?.crew[0] ?? WORKERS[0] ?? LEAD;
  const isAble = operation.who === null || by !== OWNER;
  if (row === undefined || row.status === 'due-again') {
    // Whose clock runs elsewhere is refused; the next one takes it.
    for (const each of EVERYONE) yield { by: each, claim: { type: 'start-operation', ...named } };
    return;
  }
  if (row.status === 'paused') {
    for (const each of [isAble ? by : LEAD, ...EVERYONE])
      yield { by: each, claim: { type: 'resume-operation', ...named } };
    return;
  }
  if (row.crew.length < operation.crew)
    for (const other of WORKERS)
      if (!row.crew.includes(other)) yield { by: other, claim: { type: 'join-operation', ...named } };
  for (const line of sorted(operation)) yield* lineOfBody(game, car, operation, row.run, line);
  yield { by, claim: { type: 'finish-operation', ...named } };
}

/** Stopgaps out first: a slave part keeps its joint from final. */
const sorted = (operation: CompiledOperation): CompiledOperation['body'] =>
  [...operation.body].sort((a, b) => Number(b.verb === 'out') - Number(a.verb === 'out'));

function* lineOfBody(
  game: Game,
  car: Car,
  operation: CompiledOperation,
  run: number,
  line: CompiledOperation['body'][number],
): Generator<Act> {
  const by = WORKERS[0] ?? LEAD;
  const plan = game.plan(car);
  const ref = { operation: operation.stateKey, run };
  switch (line.verb) {
    case 'snug': {
      const joint = plan.joints.get(line.joint);
      const hardware = joint === undefined ? [] : goodHardware(game, car, joint);
      if (levelOf(car.joints[line.joint]) === 'open')
        yield { by, claim: { type: 'snug-joint', car: car.id, joint: line.joint, hardware } };
      return;
    }
    case 'final':
    case 'retorque': {
      const joint = plan.joints.get(line.joint);
      const level = levelOf(car.joints[line.joint]);
      const isDone =
        line.verb === 'final'
          ? level === 'final' || level === 'verified'
          : isDoneInRun({ car }, line.joint, 'retorque', ref);
      if (joint !== undefined && !isDone) yield* tighten(game, car, joint, by);
      return;
    }
    case 'open':
      if (!isDoneInRun({ car }, line.joint, 'open', ref))
        yield { by, claim: { type: 'open-joint', car: car.id, joint: line.joint } };
      return;
    case 'recheck': {
      const joint = plan.joints.get(line.joint);
      if (joint !== undefined && !isDoneInRun({ car }, line.joint, 'recheck', ref))
        yield* recheck(game, car, joint);
      return;
    }
    case 'check': {
      const check = plan.checks.get(line.check);
      const status = car.checks[line.check]?.status;
      if (check !== undefined && status !== 'clear' && status !== 'conceded') yield* look(car, check, by);
      return;
    }
    case 'out':
      if (Object.values(car.stopgaps).some((row) => row.stopgap === line.stopgap && row.removed < row.placed))
        yield { by, claim: { type: 'remove-stopgap', car: car.id, stopgap: line.stopgap } };
      return;
    case 'fit':
      if (car.parts[line.part]?.state !== 'fitted')
        yield { by, claim: { type: 'fit-part', car: car.id, part: line.part } };
      return;
    case 'photo':
      if (!hasPhoto(car, operation.stateKey, line.slot))
        yield {
          by,
          claim: {
            type: 'add-photo',
            car: car.id,
            of: operation.stateKey,
            slot: line.slot,
            hash: photoOf(car.id),
          },
        };
      return;
    case 'place':
    case 'set':
    case 'clear':
  }
}

/** A tool that is good now and does the method; `none` where the hand does it, null where the shop has none. */
const goodTool = (game: Game, joint: CompiledJoint): Tool | 'none' | null => {
  if (joint.method === 'firm') return 'none';
  const now = new Date(game.now).toISOString();
  const found = Object.values(game.world.shop.tools).find(
    (tool) =>
      toolFitsMethod(tool.kind, joint.method) &&
      tool.calibrations.some((each) => each.on <= now.slice(0, 10) && now.slice(0, 10) <= each.due) &&
      !tool.suspect.some((each) => each.until === null || each.until >= now),
  );
  return found ?? null;
};

/** Of each item what came off the car's own donor, else from the first lot that is not kept apart. */
const goodHardware = (game: Game, car: Car, joint: CompiledJoint): readonly { item: string; lot: string }[] =>
  joint.hardware.flatMap(({ item }) => {
    const lots = Object.values(game.world.shop.lots).filter(
      (each) => each.item === item && each.quarantined === null && (asideFor(each) ?? car.id) === car.id,
    );
    const lot = lots.find(({ donor }) => donor !== undefined) ?? lots[0];
    return lot === undefined ? [] : [{ item, lot: lot.id }];
  });

const newTool = (game: Game): Claim => ({
  type: 'add-tool',
  tool: `E-${String(Object.keys(game.world.shop.tools).length + 1)}`,
  name: 'new digital',
  kind: 'digital',
  low: '10',
  high: '150',
  unit: 'N·m',
  calibrated: { on: '2026-01-05', due: '2027-12-31' },
});

/** A final as it should be; `value` where another torque than the middle of the window is wanted. */
export const finalClaim = (
  car: string,
  joint: CompiledJoint,
  tool: Tool | 'none',
  value?: string,
): CarClaim & { type: 'final-joint' } => {
  const base = { type: 'final-joint', car, joint: joint.stateKey } as const;
  const passes = Array.from({ length: joint.passes }, () => joint.order);
  if (joint.method === 'firm' || tool === 'none') return base;
  if (joint.method === 'sequence')
    return {
      ...base,
      tool: tool.id,
      passes,
      steps: Object.fromEntries(
        joint.sequence.map(({ step, window }) => [step, window === null ? 'done' : '25']),
      ),
    };
  const window = joint.specification.kind === 'window' ? joint.specification.window : null;
  const middle =
    (toNumber(window?.low ?? { num: 20n, den: 1n }) + toNumber(window?.high ?? { num: 20n, den: 1n })) / 2;
  const drag = joint.method === 'prevailing' ? 3 : 0;
  const shown = value ?? String(middle + drag);
  const each = joint.order.map(() => shown);
  return {
    ...base,
    tool: tool.id,
    passes,
    ...(window === null ? {} : { unit: window.unit }),
    ...(tool.kind === 'click' ? { setting: shown } : { readings: each }),
    ...(joint.method === 'prevailing' ? { drags: joint.order.map(() => String(drag)) } : {}),
    ...(joint.method === 'angle' ? { angles: joint.order.map(() => '90') } : {}),
  };
};

export interface Driven {
  readonly isDelivered: boolean;
  readonly steps: number;
  /** What stands against going on, where it got stuck. */
  readonly stuck: readonly Refusal[];
}

const HOURS = 3_600_000;

/** One act that is accepted, or time that passes; false where nothing helps any more, or only the gate is left. */
export const driveOn = (game: Game, rules: Rules, id: string, mayAdvance = true): boolean => {
  for (let waits = 0; waits < 4; waits += 1) {
    for (const act of useful(game, rules, id, waits < 3)) {
      if (act.claim.type === 'advance-car' && !mayAdvance) return false;
      if (game.play(act.by, act.claim, act.override === undefined ? {} : { override: act.override }) === null)
        return true;
    }
    game.now += HOURS * (waits < 1 ? 1 : 6);
  }
  return false;
};

/** Drives a car until it is delivered, stuck, or `most` acts are done. */
export const drive = (game: Game, rules: Rules, id: string, most: number): Driven => {
  let steps = 0;
  while (steps < most && !game.car(id).delivered && driveOn(game, rules, id)) steps += 1;
  const car = game.car(id);
  const seen = rules.assess(game.plan(car), car, game.factsNow());
  return {
    isDelivered: car.delivered,
    steps,
    stuck: car.delivered ? [] : [...seen.gate.unmet, ...seen.looseEnds.map((end) => end.refusal)],
  };
};
