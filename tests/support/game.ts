/** A shop played line by line through a record of rules: its world, its log, its clock, its people and tools. */
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PersonId, Role } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Claim, Command } from '@/lib/domain/commands';
import type { Event } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { factsAt } from '@/lib/domain/play';
import type { Line, Stage } from '@/lib/domain/play';
import { EMPTY_WORLD } from '@/lib/domain/world';
import type { World } from '@/lib/domain/world';
import { ITEMS } from './random-plan';
import type { Rules } from './rules';

export const PLAN = 'sha256:plan';
export const OWNER = 'ora';
export const LEAD = 'lea';
export const PEOPLE: readonly { id: PersonId; roles: readonly Role[]; isQualified: boolean }[] = [
  { id: OWNER, roles: ['owner'], isQualified: false },
  { id: LEAD, roles: ['lead', 'technician'], isQualified: true },
  { id: 'tim', roles: ['technician'], isQualified: true },
  { id: 'una', roles: ['technician'], isQualified: true },
  { id: 'vic', roles: ['technician'], isQualified: true },
  { id: 'wyn', roles: ['technician'], isQualified: true },
  { id: 'zed', roles: ['technician'], isQualified: false },
];
export const CARS = ['one', 'two'];
/** To who does outside work. */
export const TRIP = '1';

const MINUTE = 60_000;
const START = Date.parse('2026-11-02T08:00:00.000Z');
export const instant = (milliseconds: number): string => new Date(milliseconds).toISOString();

/** One accepted command: the world before it, its events, the world after it. */
export interface Step {
  readonly line: Line;
  readonly before: World;
  readonly events: readonly Event[];
  readonly after: World;
  /** The whole log, these events included. */
  readonly log: readonly Event[];
  readonly game: Game;
}
export type Watch = (step: Step) => void;

export interface Timing {
  /** How long before it is heard it was done. */
  readonly lateMinutes?: number;
  /** How long before it is heard the device was last in touch. */
  readonly contactMinutes?: number;
  readonly override?: Command['override'];
}

export class Game {
  world: World = EMPTY_WORLD;
  readonly log: Event[] = [];
  readonly lines: Line[] = [];
  now = START;
  readonly stage: Stage;
  private commands = 0;
  private readonly rules: Rules;
  private readonly document: PlanDocument;
  private readonly watch: Watch;

  constructor(rules: Rules, document: PlanDocument, watch: Watch = () => undefined) {
    this.rules = rules;
    this.document = document;
    this.watch = watch;
    this.stage = { plans: { [PLAN]: document }, dayOf: (at) => at.slice(0, 10) };
  }

  car(id: string): Car {
    const car = this.world.cars[id];
    if (car === undefined) throw new Error(`no car ${id}`);
    return car;
  }

  plan(car: Car): CompiledPlan {
    return compilePlan(this.document, car.options);
  }

  /** A line as it would be heard now; not played. */
  lineOf(by: PersonId, claim: Claim, timing: Timing = {}): Line {
    this.commands += 1;
    return {
      now: instant(this.now),
      by,
      command: {
        id: `c-${String(this.commands)}`,
        doneAt: instant(this.now - (timing.lateMinutes ?? 0) * MINUTE),
        claim,
        ...(timing.override === undefined ? {} : { override: timing.override }),
      },
      ...(timing.contactMinutes === undefined
        ? {}
        : { lastContact: instant(this.now - timing.contactMinutes * MINUTE) }),
    };
  }

  factsOf(line: Line): Facts {
    return factsAt(this.world, this.stage, line);
  }

  /** What somebody looking at the board would be told now. */
  factsNow(by: PersonId = LEAD): Facts {
    return this.factsOf({
      now: instant(this.now),
      by,
      command: { id: '', doneAt: instant(this.now), claim: { type: 'remove-person', person: '' } },
    });
  }

  judge(line: Line): ReturnType<Rules['decide']> {
    return this.rules.decide(this.factsOf(line), this.world, line.command);
  }

  /** Null where it was accepted, else every reason why not. */
  play(by: PersonId, claim: Claim, timing: Timing = {}): readonly Refusal[] | null {
    const line = this.lineOf(by, claim, timing);
    const verdict = this.judge(line);
    if (!verdict.ok) return verdict.error;
    const before = this.world;
    this.world = verdict.value.reduce((world, event) => this.rules.evolve(world, event), before);
    this.log.push(...verdict.value);
    this.lines.push(line);
    this.now += MINUTE;
    this.watch({ line, before, events: verdict.value, after: this.world, log: this.log, game: this });
    return null;
  }

  must(by: PersonId, claim: Claim): void {
    const refusals = this.play(by, claim);
    if (refusals !== null) throw new Error(`set-up refused: ${JSON.stringify([claim, refusals])}`);
  }

  /** The last lines in short, for a message. */
  told(): string {
    return this.lines
      .slice(SET_UP)
      .map(
        ({ by, command: { id, doneAt, claim } }) =>
          `${id} ${by} ${doneAt.slice(5, 16)} ${JSON.stringify(claim)}`,
      )
      .join('\n');
  }
}

const TOOL = { low: '10', high: '150', unit: 'N·m' } as const;
const CALIBRATED = { on: '2026-01-05', due: '2027-12-31' };
/** Commands that every shop begins with. */
const SET_UP = PEOPLE.length + 5 + 2 * Object.keys(ITEMS).length;

export const openShop = (game: Game): void => {
  for (const { id, roles, isQualified } of PEOPLE)
    game.must(OWNER, {
      type: 'add-person',
      person: id,
      name: id,
      roles,
      ...(isQualified ? { qualifications: [{ key: 'torque' }] } : {}),
    });
  game.must(LEAD, {
    type: 'add-tool',
    tool: 'W-1',
    name: 'click',
    kind: 'click',
    ...TOOL,
    calibrated: CALIBRATED,
  });
  game.must(LEAD, {
    type: 'add-tool',
    tool: 'D-1',
    name: 'dial',
    kind: 'dial',
    ...TOOL,
    calibrated: CALIBRATED,
  });
  game.must(LEAD, {
    type: 'add-tool',
    tool: 'E-1',
    name: 'digital',
    kind: 'digital',
    ...TOOL,
    calibrated: CALIBRATED,
  });
  game.must(LEAD, { type: 'set-supplier', supplier: 'works', name: 'Works', orderDays: [1], lead: 5 });
  game.must(LEAD, {
    type: 'open-trip',
    trip: TRIP,
    supplier: 'works',
    goes: '2026-11-02',
    due: '2026-11-09',
  });
  game.must(LEAD, { type: 'add-tool', tool: 'W-old', name: 'overdue click', kind: 'click', ...TOOL });
  game.must(LEAD, { type: 'add-adapter', adapter: 'A-1', name: "crow's-foot", extension: '40', unit: 'mm' });
  for (const item of Object.keys(ITEMS))
    for (const number of [1, 2])
      game.must(LEAD, { type: 'receive-lot', lot: `L-${item}-${String(number)}`, item, quantity: 50 });
};

export const startCar = (game: Game, car: string, options: Readonly<Record<string, string>> = {}): void => {
  game.must(LEAD, { type: 'start-car', car, plan: PLAN, chassis: `chassis ${car}`, options });
};
