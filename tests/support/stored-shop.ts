/** A small shop in a real database: people, a tool, a plan, and commands given to it through the one write path. */
import { randomUUID } from 'node:crypto';
import type { Claim, Command } from '@/lib/domain/commands';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import type { Given, RunAnswer } from '@/lib/server/given';
import { keepPlan } from '@/lib/server/load/plan';
import { runCommand } from '@/lib/server/run-command';
import { freshDatabase } from './postgres';
import type { FreshDatabase } from './postgres';
import { plan } from './shop';

/** Two stages with one joint between them; the second has room for one car. */
export const TWO_STAGES: PlanDocument = plan({
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels', capacity: 1 }, RO: { name: 'Road' } },
  operations: {
    'AX-010': { name: 'Axle on', stage: 'AX', body: ['final J-1'] },
    'AX-020': { name: 'Look', stage: 'AX', body: ['check K-1', 'place G-1'] },
    'WH-010': { name: 'Wheels on', stage: 'WH', body: ['out G-1'] },
  },
  joints: {
    'J-1': { name: 'Spring eye', fasteners: 2, method: 'click', torque: '40 ± 4 N·m', source: 'invented' },
  },
  checks: { 'K-1': { name: 'Stripes whole', kind: 'visual' } },
  stopgaps: { 'G-1': { name: 'wrap', quantity: 1, outBy: 'WH' } },
});

const PEOPLE = [
  { person: 'ada', name: 'Ada', roles: ['owner'] },
  { person: 'leo', name: 'Leo', roles: ['lead'] },
  { person: 'tom', name: 'Tom', roles: ['technician'] },
  { person: 'tess', name: 'Tess', roles: ['technician'] },
] as const;

export const MORNING = '2026-03-02T08:00:00.000Z';

export interface Told {
  readonly id?: string;
  readonly now?: string;
  readonly device?: string;
  readonly override?: Command['override'];
}

export class StoredShop {
  readonly db: Database;
  private readonly database: FreshDatabase | null;
  readonly plan: string;
  private clock = Date.parse(MORNING);

  private constructor(db: Database, at: FreshDatabase | null, planHash: string) {
    this.db = db;
    this.database = at;
    this.plan = planHash;
  }

  /** Opens a shop on a database of its own; `close` drops it. `room` is how many talk to it at once. */
  static async open(document: PlanDocument = TWO_STAGES, room = 5): Promise<StoredShop> {
    const at = await freshDatabase();
    return StoredShop.on(openDatabase(at.url, room), document, at);
  }

  /** Opens a shop on an empty database that somebody else looks after. */
  static async on(
    db: Database,
    document: PlanDocument = TWO_STAGES,
    at: FreshDatabase | null = null,
  ): Promise<StoredShop> {
    const kept = await keepPlan(db, document);
    if (!('hash' in kept)) throw new Error(`the plan is there under another hash: ${kept.taken}`);
    const shop = new StoredShop(db, at, kept.hash);
    await db.shopSetting.create({ data: { name: 'Test shop', zone: 'UTC' } });
    for (const person of PEOPLE) await shop.must('ada', { type: 'add-person', ...person });
    await shop.must('leo', {
      type: 'add-tool',
      tool: 'T-02',
      name: 'click wrench',
      kind: 'click',
      low: '5',
      high: '100',
      unit: 'N·m',
      calibrated: { on: '2026-01-05', due: '2026-12-31' },
      cycleLimit: 100_000,
    });
    await shop.must('leo', { type: 'release-plan', plan: kept.hash });
    return shop;
  }

  async close(): Promise<void> {
    await this.db.$disconnect();
    await this.database?.drop();
  }

  get at(): FreshDatabase {
    if (this.database === null) throw new Error('this shop stands on somebody else’s database');
    return this.database;
  }

  /** What `runCommand` is given; each a second after the one before. */
  given(actor: string, claim: Claim, told: Told = {}): Given {
    this.clock += 1000;
    const now = told.now ?? new Date(this.clock).toISOString();
    const override = told.override === undefined ? {} : { override: told.override };
    return {
      command: { id: told.id ?? randomUUID(), doneAt: now, claim, ...override },
      actor,
      present: null,
      device: told.device ?? null,
      lastContact: null,
      isInOrder: true,
      now,
    };
  }

  run(given: Given): Promise<RunAnswer> {
    return runCommand(this.db, 'UTC', given);
  }

  give(actor: string, claim: Claim, told: Told = {}): Promise<RunAnswer> {
    return this.run(this.given(actor, claim, told));
  }

  async must(actor: string, claim: Claim, told: Told = {}): Promise<void> {
    const answer = await this.give(actor, claim, told);
    if (answer.outcome !== 'accepted')
      throw new Error(`${actor}'s ${claim.type} was not accepted: ${JSON.stringify(answer)}`);
  }

  startCar(car: string): Promise<void> {
    return this.must('leo', { type: 'start-car', car, plan: this.plan, chassis: car });
  }

  /** Begun, torqued, looked at: nothing stands before its first gate. */
  async carAtOpenGate(car: string, tom = 'tom', tess = 'tess'): Promise<void> {
    await this.startCar(car);
    await this.must(tom, { type: 'start-operation', car, operation: 'AX-010' });
    await this.must(tom, {
      type: 'final-joint',
      car,
      joint: 'J-1',
      tool: 'T-02',
      setting: '40',
      passes: [[1, 2]],
    });
    await this.must(tom, { type: 'finish-operation', car, operation: 'AX-010' });
    await this.must(tess, { type: 'start-operation', car, operation: 'AX-020' });
    await this.must(tess, { type: 'pass-check', car, check: 'K-1' });
    await this.must(tess, { type: 'place-stopgap', car, stopgap: 'G-1' });
    await this.must(tess, { type: 'finish-operation', car, operation: 'AX-020' });
  }

  advance(car: string, told: Told = {}): Promise<RunAnswer> {
    return this.give('leo', { type: 'advance-car', car, to: 'WH' }, told);
  }
}
