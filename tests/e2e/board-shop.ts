/** Cars for the tests of the track board: a short plan of their own, beside the demo's cars. */
import { randomUUID } from 'node:crypto';
import type { Claim } from '@/lib/domain/commands';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import { runCommand } from '@/lib/server/run-command';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { freeClock } from '@/tests/support/free-clock';

const SHORT: PlanDocument = {
  plan: 'Short',
  revision: 'r1',
  stages: { ONE: { name: 'First' }, TWO: { name: 'Second', capacity: 1 }, THREE: { name: 'Third' } },
  operations: { 'ON-010': { name: 'Look it over', stage: 'ONE', body: ['check K-901'] } },
  checks: { 'K-901': { name: 'All of it is there', kind: 'visual' } },
};

export class BoardShop {
  readonly shop: OpenedShop;
  readonly db: Database;
  private readonly plan: string;

  private constructor(shop: OpenedShop, db: Database, plan: string) {
    this.shop = shop;
    this.db = db;
    this.plan = plan;
  }

  static async open(): Promise<BoardShop> {
    const shop = await openShop();
    const db = openDatabase(shop.database.url, 2);
    const kept = await keepPlan(db, SHORT);
    if (!('hash' in kept)) throw new Error(`the plan is there already: ${kept.taken}`);
    const opened = new BoardShop(shop, db, kept.hash);
    await opened.must('mara', { type: 'release-plan', plan: kept.hash });
    await freeClock(db, 'oswin');
    return opened;
  }

  async close(): Promise<void> {
    await this.db.$disconnect();
    await this.shop.close();
  }

  async must(actor: string, claim: Claim): Promise<void> {
    const now = new Date().toISOString();
    const answer = await runCommand(this.db, 'UTC', {
      command: { id: randomUUID(), doneAt: now, claim },
      actor,
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    if (answer.outcome !== 'accepted') throw new Error(`${claim.type}: ${JSON.stringify(answer)}`);
  }

  /** One car in its first stage, its gate closed by the one thing that is to be done there. */
  begin(car: string): Promise<void> {
    return this.must('mara', { type: 'start-car', car, plan: this.plan, chassis: car, colour: 'Slate blue' });
  }

  /** One whose first gate is open. */
  async beginReady(car: string): Promise<void> {
    await this.begin(car);
    await this.must('oswin', { type: 'start-operation', car, operation: 'ON-010' });
    await this.must('oswin', { type: 'pass-check', car, check: 'K-901' });
    await this.must('oswin', { type: 'finish-operation', car, operation: 'ON-010' });
  }

  advance(car: string): Promise<void> {
    return this.must('mara', { type: 'advance-car', car, to: 'TWO' });
  }

  /** Index of the stage that the database has it in. */
  async stageOf(car: string): Promise<number> {
    const row = await this.db.car.findUniqueOrThrow({ where: { id: car }, select: { row: true } });
    return (row.row as unknown as { readonly stage: number }).stage;
  }
}
