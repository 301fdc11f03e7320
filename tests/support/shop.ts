/**
 * A small shop to tell a walk-through in: given a plan, when somebody does something, then the car stands so.
 * Every act goes through `play`, as in the seed and in `replay`; a minute passes with each.
 */
import { assess } from '@/lib/domain/assess';
import type { Assessment } from '@/lib/domain/assess';
import { COMMANDS } from '@/lib/domain/authority';
import { add, divide, exact, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Refusal, RefusalCode } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import { convert } from '@/lib/domain/base/units';
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import type {
  CarId,
  Instant,
  Key,
  Level,
  PersonId,
  Role,
  StateKey,
  ToolId,
} from '@/lib/domain/base/vocabulary';
import { doubtsOf, levelOf } from '@/lib/domain/car/joint';
import type { Doubt } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { CarClaim, Claim, Command, ShopClaim } from '@/lib/domain/commands';
import type { Event } from '@/lib/domain/events';
import { planOf } from '@/lib/domain/facts';
import type { Facts } from '@/lib/domain/facts';
import { checkPlan } from '@/lib/domain/plan/check';
import type {
  BodyRequirement,
  CompiledCheck,
  CompiledJoint,
  CompiledOperation,
  CompiledPlan,
} from '@/lib/domain/plan/compiled';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { parseDuration } from '@/lib/domain/plan/notation';
import { problemSentence } from '@/lib/domain/plan/problem-sentence';
import type { Window } from '@/lib/domain/plan/window';
import { factsAt, play } from '@/lib/domain/play';
import type { Line, Played } from '@/lib/domain/play';
import type { TorqueEvidence } from '@/lib/domain/torque/evidence';
import { notClear } from '@/lib/domain/unmet';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';

type Loose<Each> = Each extends CarClaim ? Omit<Each, 'car'> & { readonly car?: CarId } : never;
/** A claim as it is told: on car C1 unless it says otherwise. */
export type Told = ShopClaim | Loose<CarClaim>;

/** How it reached the shop. Absent = said now, by a device that is in touch. */
export interface How {
  /** When the hand turned. */
  readonly doneAt?: Instant;
  /** When the device was last in touch. */
  readonly lastContact?: Instant;
  readonly override?: Command['override'];
  readonly batch?: string;
}

/** More about a tightening than the plan says by itself. */
type Tightening = TorqueEvidence & {
  readonly car?: CarId;
  readonly cycle?: number;
  readonly hardware?: Extract<CarClaim, { type: 'final-joint' }>['hardware'];
};

/** A joint of two, read on a dial, which a second person must look at. Its value is invented. */
export const ARM = {
  name: 'Arm',
  fasteners: 2,
  method: 'dial',
  torque: '45 ± 3 N·m',
  source: 'invented',
  critical: true,
  verify: 'seen',
} as const;

/** A plan that the checker finds no error in. */
export const plan = (
  of: Omit<PlanDocument, 'plan' | 'revision'> & Partial<Pick<PlanDocument, 'plan' | 'revision'>>,
): PlanDocument => {
  const document: PlanDocument = { plan: 'Corbel 54', revision: '1', ...of };
  const errors = checkPlan(document).filter((problem) => problem.rank === 'error');
  if (errors.length > 0) throw new Error(`not a sound plan:\n${errors.map(problemSentence).join('\n')}`);
  return document;
};

/** Who works here: an owner, a lead, two technicians, and one who verifies. */
const PEOPLE: Readonly<Record<PersonId, { name: string; roles: readonly Role[] }>> = {
  ada: { name: 'Ada', roles: ['owner'] },
  leo: { name: 'Leo', roles: ['lead'] },
  tom: { name: 'Tom', roles: ['technician'] },
  tess: { name: 'Tess', roles: ['technician'] },
  vera: { name: 'Vera', roles: ['technician'] },
};

const CALIBRATED = { on: '2026-01-05', due: '2026-12-31' };
const TOOLS: readonly ShopClaim[] = [
  {
    type: 'add-tool',
    tool: 'T-02',
    name: 'Click 5 to 100',
    kind: 'click',
    low: '5',
    high: '100',
    unit: 'N·m',
  },
  { type: 'add-tool', tool: 'T-05', name: 'Dial 5 to 200', kind: 'dial', low: '5', high: '200', unit: 'N·m' },
  {
    type: 'add-tool',
    tool: 'T-07',
    name: 'Dial 10 to 250',
    kind: 'dial',
    low: '10',
    high: '250',
    unit: 'lbf·ft',
  },
].map((tool) => ({ ...tool, calibrated: CALIBRATED }) as ShopClaim);

/** The shop with its people and tools, and car C1 begun on the plan. */
export const shopWith = (
  document: PlanDocument,
  {
    options = {},
    also = [],
    begins = '2026-03-02T08:00:00.000Z',
  }: {
    readonly options?: Readonly<Record<Key, string>>;
    /** Other revisions and models. */
    readonly also?: readonly PlanDocument[];
    readonly begins?: Instant;
  } = {},
): Shop => {
  const shop = new Shop([document, ...also], begins);
  const qualifications = [document, ...also].flatMap(qualificationsIn).map((key) => ({ key }));
  for (const [person, { name, roles }] of Object.entries(PEOPLE))
    shop.does('ada', { type: 'add-person', person, name, roles, qualifications });
  for (const tool of TOOLS) shop.does('leo', tool);
  shop.startCar('C1', document, options);
  return shop;
};

const qualificationsIn = ({ operations = {}, joints = {}, checks = {} }: PlanDocument): readonly Key[] => {
  const named = [
    ...Object.values(operations).map((each) => each.who),
    ...Object.values(joints).flatMap((each) => [each.who, each.verifier]),
    ...Object.values(checks).map((each) => each.who),
  ];
  return [...new Set(named.filter((each) => each !== undefined))];
};

/** The table of commands says what each may be refused for; these three any of them may. */
const mayBeRefusedFor = (type: Claim['type'], code: RefusalCode): boolean =>
  ['unknown-thing', 'unknown-person', 'not-allowed'].includes(code) || COMMANDS[type].refuses.includes(code);

const hashOf = ({ plan: model, revision }: PlanDocument): string => `${model} r${revision}`;

export class Shop {
  world: World = EMPTY_WORLD;
  /** The id of the last command, which is the id of its signature. */
  last = '';
  /** Everything that was accepted so far. */
  readonly heard: Event[] = [];
  private count = 0;
  private clock: Instant;
  private readonly plans: Readonly<Record<string, PlanDocument>>;

  constructor(documents: readonly PlanDocument[], begins: Instant) {
    this.plans = Object.fromEntries(documents.map((each) => [hashOf(each), each]));
    this.clock = begins;
  }

  // --- the clock ---

  get now(): Instant {
    return this.clock;
  }

  /** Time passes: `16 h`, `10 min`, `7 d`. */
  later(duration: string): this {
    const passed = parseDuration(duration);
    if (passed === null) throw new Error(`not a duration: ${duration}`);
    this.clock = new Date(Date.parse(this.clock) + passed).toISOString();
    return this;
  }

  // --- acts ---

  /** Accepted, or the test fails with every reason why not. */
  does(person: PersonId, told: Told, how: How = {}): readonly Event[] {
    const { world, verdict } = this.play(person, told, how);
    if (!verdict.ok)
      throw new Error(`${person} was refused ${told.type}:\n${this.sentences(verdict.error).join('\n')}`);
    this.world = world;
    this.heard.push(...verdict.value);
    return verdict.value;
  }

  /** Refused, with these reasons; the car is as it was. */
  refused(person: PersonId, told: Told, how: How = {}): readonly Refusal[] {
    const { verdict } = this.play(person, told, how);
    if (verdict.ok)
      throw new Error(
        `${person}'s ${told.type} was accepted: ${verdict.value.map((e) => e.type).join(', ')}`,
      );
    const strange = verdict.error.find(({ code }) => !mayBeRefusedFor(told.type, code));
    if (strange !== undefined)
      throw new Error(`${told.type} is refused for ${strange.code}, which the table of commands doesn't say`);
    return verdict.error;
  }

  codes(person: PersonId, told: Told, how: How = {}): readonly RefusalCode[] {
    return this.refused(person, told, how).map((each) => each.code);
  }

  startCar(car: CarId, document: PlanDocument, options: Readonly<Record<Key, string>> = {}): void {
    this.does('leo', { type: 'start-car', car, plan: hashOf(document), chassis: `CH-${car}`, options });
  }

  /** Brought to final with evidence as the plan wants it, but for what is told otherwise. */
  tighten(person: PersonId, joint: StateKey, tool?: ToolId, more: Tightening = {}): readonly Event[] {
    return this.does(person, this.tightening(joint, tool, more));
  }

  /** The claim that `tighten` makes, for a test that expects it to be refused. */
  tightening(joint: StateKey, tool?: ToolId, more: Tightening = {}): Told {
    const evidence = this.evidenceFor(this.joint(joint, more.car), tool);
    return { type: 'final-joint', joint, ...evidence, ...more };
  }

  /** Verified by the joint's own method. */
  verify(person: PersonId, joint: StateKey, car?: CarId): readonly Event[] {
    return this.does(person, this.verifying(joint, car));
  }

  verifying(joint: StateKey, car?: CarId): Told {
    const compiled = this.joint(joint, car);
    const method = compiled.verify ?? 'seen';
    const tool = method === 're-applied' ? { tool: toolFor(compiled) } : {};
    return { type: 'verify-joint', joint, method, ...tool, ...on(car) };
  }

  /** The whole operation: started, every line of its body that isn't so yet, finished. */
  perform(person: PersonId, operation: StateKey, car?: CarId): readonly Event[] {
    const compiled = this.operation(operation, car);
    return [
      ...this.begin(person, operation, car),
      ...this.doBody(person, compiled, car),
      ...this.finish(person, operation, car),
    ];
  }

  begin(person: PersonId, operation: StateKey, car?: CarId): readonly Event[] {
    const { crew } = this.operation(operation, car);
    const others = Object.keys(PEOPLE).filter((each) => each.startsWith('t') && each !== person);
    return [
      ...this.does(person, { type: 'start-operation', operation, ...on(car) }),
      ...others
        .slice(0, crew - 1)
        .flatMap((each) => this.does(each, { type: 'join-operation', operation, ...on(car) })),
    ];
  }

  finish(person: PersonId, operation: StateKey, car?: CarId): readonly Event[] {
    return this.does(person, { type: 'finish-operation', operation, ...on(car) });
  }

  private doBody(person: PersonId, operation: CompiledOperation, car?: CarId): readonly Event[] {
    return operation.body.flatMap((line) => this.doLine(person, operation, line, car));
  }

  private doLine(
    person: PersonId,
    operation: CompiledOperation,
    line: BodyRequirement,
    car?: CarId,
  ): readonly Event[] {
    const at = on(car);
    switch (line.verb) {
      case 'snug':
        return isAtLevel(this.level(line.joint, car), 'snug')
          ? []
          : this.does(person, { type: 'snug-joint', joint: line.joint, ...at });
      case 'final':
        return isAtLevel(this.level(line.joint, car), 'final') && this.doubts(line.joint, car).length === 0
          ? []
          : this.tighten(person, line.joint, undefined, at);
      case 'retorque':
        return this.tighten(person, line.joint, undefined, at);
      case 'recheck': {
        const joint = this.joint(line.joint, car);
        const tool = joint.method === 'firm' ? {} : { tool: toolFor(joint) };
        return this.does(person, { type: 'recheck-joint', joint: line.joint, ...tool, ...at });
      }
      case 'open':
        return this.does(person, { type: 'open-joint', joint: line.joint, ...at });
      case 'check':
        return notClear(this.car(car), line.check) === null ? [] : this.passCheck(person, line.check, car);
      case 'out':
        return this.stopgapsIn(line.stopgap, car) === 0
          ? []
          : this.does(person, { type: 'remove-stopgap', stopgap: line.stopgap, ...at });
      case 'fit': {
        const state = this.car(car).parts[line.part]?.state;
        if (state === 'fitted') return [];
        return [
          ...(state === 'present' ? [] : this.does(person, { type: 'receive-part', part: line.part, ...at })),
          ...this.does(person, { type: 'fit-part', part: line.part, ...at }),
        ];
      }
      case 'photo':
        return this.does(person, {
          type: 'add-photo',
          of: operation.stateKey,
          slot: line.slot,
          hash: `${operation.stateKey}/${line.slot}`,
          ...at,
        });
      // These happen by finishing.
      case 'place':
      case 'set':
      case 'clear':
        return [];
    }
  }

  /** Passed with values inside the limits, after it has held as long as it must. */
  passCheck(person: PersonId, check: StateKey, car?: CarId): readonly Event[] {
    const compiled = found(this.plan(car).checks.get(check), check);
    const begun = compiled.holdsMs === 0 ? [] : this.does(person, { type: 'begin-check', check, ...on(car) });
    this.later(`${compiled.holdsMs / 1000} s`);
    return [
      ...begun,
      ...this.does(person, { type: 'pass-check', check, values: goodValues(compiled), ...on(car) }),
    ];
  }

  // --- what stands ---

  car(car: CarId = 'C1'): Car {
    return found(this.world.cars[car], car);
  }

  plan(car: CarId = 'C1'): CompiledPlan {
    return found(planOf({ plans: this.plans }, this.car(car)) ?? undefined, `plan of ${car}`);
  }

  facts(person: PersonId = 'leo'): Facts {
    const claim: Claim = { type: 'add-note', car: 'C1', of: '', text: '' };
    const command = { id: '', doneAt: this.clock, claim };
    return factsAt(this.world, this.stage(), { now: this.clock, by: person, command });
  }

  assess(car?: CarId): Assessment {
    return assess(this.plan(car), this.car(car), this.facts());
  }

  /** The codes of what keeps the car's gate closed, those that stand under another line too. */
  gate(car?: CarId): readonly RefusalCode[] {
    return this.assess(car)
      .gate.unmet.flatMap((each) => [each, ...(each.under ?? [])])
      .map((each) => each.code);
  }

  /** Ids of the jobs that can be begun or are under way; with `waiting`, of those that wait. */
  jobs(state: 'open' | 'waiting' = 'open', car?: CarId): readonly string[] {
    return this.assess(car)
      .jobs.filter((job) => (job.state === 'waiting') === (state === 'waiting'))
      .map((job) => job.id);
  }

  level(joint: StateKey, car?: CarId): Level {
    return levelOf(this.car(car).joints[joint]);
  }

  doubts(joint: StateKey, car?: CarId): readonly Doubt[] {
    return doubtsOf(this.car(car).joints[joint], this.facts());
  }

  isSo(condition: Key, car?: CarId): boolean {
    return this.car(car).conditions[condition]?.value ?? false;
  }

  /** How many of a stopgap are in, over all its placings. */
  stopgapsIn(stopgap: Key, car?: CarId): number {
    return Object.entries(this.car(car).stopgaps)
      .filter(([id, row]) => id === stopgap || row.stopgap === stopgap)
      .reduce((sum, [, row]) => sum + row.placed - row.removed, 0);
  }

  /** The refusals in words, with the plan's own names. */
  sentences(refusals: readonly Refusal[], car: CarId = 'C1'): readonly string[] {
    const document = this.plans[this.world.cars[car]?.plan ?? ''];
    const nameOf = (key: string): string | null => {
      const bare = key.split('@')[0] ?? key;
      const entry =
        document?.operations?.[bare] ??
        document?.joints?.[bare] ??
        document?.checks?.[bare] ??
        document?.parts?.[bare] ??
        document?.items?.[bare] ??
        document?.stages[bare];
      return entry?.name ?? document?.conditions?.[bare] ?? this.world.shop.people[key]?.name ?? null;
    };
    return refusals.map((refusal) => sentence(refusal, nameOf));
  }

  // --- inside ---

  private play(person: PersonId, told: Told, how: How): Played {
    this.later('1 min');
    this.count += 1;
    this.last = `c-${String(this.count)}`;
    const { lastContact, doneAt = this.clock, ...more } = how;
    const command: Command = { id: this.last, doneAt, claim: whole(told), ...more };
    const line: Line = {
      now: this.clock,
      by: person,
      command,
      ...(lastContact === undefined ? {} : { lastContact }),
    };
    return play(this.world, this.stage(), line);
  }

  private stage(): Parameters<typeof play>[1] {
    return { plans: this.plans, dayOf: (at) => at.slice(0, 10) };
  }

  private joint(key: StateKey, car?: CarId): CompiledJoint {
    return found(this.plan(car).joints.get(key), key);
  }

  private operation(key: StateKey, car?: CarId): CompiledOperation {
    return found(this.plan(car).operations.get(key), key);
  }

  private evidenceFor(joint: CompiledJoint, given: ToolId | undefined): TorqueEvidence {
    if (joint.method === 'sequence')
      return {
        steps: Object.fromEntries(
          joint.sequence.map(({ step, window }) => [step, window === null ? 'done' : aim(window)]),
        ),
      };
    const { specification, order, angle } = joint;
    if (joint.method === 'firm') return {};
    const passes = Array.from({ length: joint.passes }, () => order);
    if (specification.kind !== 'window') return { tool: given ?? toolFor(joint), passes };
    const id = given ?? toolFor(joint);
    const tool = found(this.world.shop.tools[id], id);
    const drag = joint.method === 'prevailing' ? exact(1n) : exact(0n);
    const value = convert(target(specification.window), specification.window.unit, tool.unit);
    const shown = toDecimalText(add(found(value ?? undefined, 'torque'), drag));
    return {
      tool: id,
      passes,
      ...(tool.kind === 'click' ? { setting: shown } : { readings: order.map(() => shown) }),
      ...(joint.method === 'prevailing' ? { drags: order.map(() => toDecimalText(drag)) } : {}),
      ...(angle === null ? {} : { angles: order.map(() => aim(angle)) }),
    };
  }
}

const on = (car: CarId | undefined): { readonly car?: CarId } => (car === undefined ? {} : { car });

const whole = (told: Told): Claim =>
  // Told is Claim with the car left out where it is C1; the table knows which claims have one.
  (COMMANDS[told.type].stream === 'shop' ? told : { car: 'C1', ...told }) as Claim;

const found = <T>(thing: T | undefined, name: string): T => {
  if (thing === undefined) throw new Error(`the test names “${name}”, and there is none`);
  return thing;
};

/** A click tool where that will do, else the dial. */
const toolFor = (joint: CompiledJoint): ToolId => (joint.method === 'click' ? 'T-02' : 'T-05');

/** What one would aim at: the value itself, the middle, or the one limit. */
const target = ({ target: named, low, high }: Window): Exact => {
  const middle = low === null || high === null ? null : divide(add(low, high), exact(2n));
  return found(named ?? middle ?? low ?? high ?? undefined, 'value of a window');
};

const aim = (window: Window): string => toDecimalText(target(window));

const goodValues = (check: CompiledCheck): Readonly<Record<string, string>> =>
  Object.fromEntries(
    check.values.map(({ name, limit }) => [name, limit.kind === 'statement' ? 'yes' : aim(limit.window)]),
  );
