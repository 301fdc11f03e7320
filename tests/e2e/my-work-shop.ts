/** A short plan with cautions, hardware, torque and a second person, beside the demo's cars. All invented. */
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

const PLAN: PlanDocument = {
  plan: 'Day',
  revision: 'r1',
  stages: { BX: { name: 'Box' }, OUT: { name: 'Out' } },
  operations: {
    'BX-010': {
      name: 'Box on its bracket',
      stage: 'BX',
      minutes: 90,
      cautions: ['stands', 'roll'],
      steps: ['Push each stand pin: all four seated.', 'Paint the slip mark across nut and bracket.'],
      consumables: { PAINT: 1 },
      body: ['snug J-951', 'final J-951', 'check K-951'],
    },
    'BX-020': { name: 'Sweep the bay', stage: 'BX', minutes: 15 },
    'BX-030': { name: 'Cover on', stage: 'BX', needs: ['J-951 verified'] },
  },
  joints: {
    'J-951': {
      name: 'Box to bracket',
      fasteners: 2,
      method: 'click',
      torque: '22 ± 2 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      hardware: { 'NUT-95': 2 },
    },
  },
  checks: { 'K-951': { name: 'Box sits flat', kind: 'visual' } },
  items: { 'NUT-95': { name: 'Lock nut M8' }, PAINT: { name: 'Slip-mark paint' } },
  cautions: {
    stands: { hazard: 'the car is on stands', text: 'Nobody goes under until all four pins are home.' },
    roll: { hazard: 'do not roll it', text: 'What is snug lets go without warning.' },
  },
};

export class MyWorkShop {
  readonly shop: OpenedShop;
  readonly db: Database;
  private readonly plan: string;

  private constructor(shop: OpenedShop, db: Database, plan: string) {
    this.shop = shop;
    this.db = db;
    this.plan = plan;
  }

  static async open(): Promise<MyWorkShop> {
    const shop = await openShop();
    const db = openDatabase(shop.database.url, 2);
    const kept = await keepPlan(db, PLAN);
    if (!('hash' in kept)) throw new Error(`the plan is there already: ${kept.taken}`);
    const opened = new MyWorkShop(shop, db, kept.hash);
    await opened.must('mara', { type: 'release-plan', plan: kept.hash });
    await opened.must('mara', {
      type: 'add-tool',
      tool: 'T-95',
      name: 'click wrench',
      kind: 'click',
      low: '5',
      high: '60',
      unit: 'N·m',
      calibrated: { on: '2026-01-05', due: '2027-12-31' },
    });
    return opened;
  }

  async close(): Promise<void> {
    await this.db.$disconnect();
    await this.shop.close();
  }

  /** A car whose first job is given to one person, who is at nothing else. */
  async begin(car: string, person: string): Promise<void> {
    await freeClock(this.db, person);
    await this.must('mara', {
      type: 'start-car',
      car,
      plan: this.plan,
      chassis: car,
      colour: 'Bottle green',
    });
    await this.must('mara', { type: 'assign', car, job: 'operation:BX-010:1', add: [person] });
  }

  /** Torqued and signed by this person: it waits for a second. */
  async toFinal(car: string, person: string): Promise<void> {
    await this.begin(car, person);
    await this.must(person, { type: 'start-operation', car, operation: 'BX-010' });
    await this.must(person, { type: 'snug-joint', car, joint: 'J-951' });
    await this.must(person, {
      type: 'final-joint',
      car,
      joint: 'J-951',
      tool: 'T-95',
      setting: '22',
      passes: [[1, 2]],
    });
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

  free(person: string): Promise<void> {
    return freeClock(this.db, person);
  }

  async status(car: string, operation: string): Promise<{ status: string; present: readonly string[] }> {
    const found = await this.db.carOperation.findUniqueOrThrow({
      where: { carId_key: { carId: car, key: operation } },
      select: { row: true },
    });
    return found.row as unknown as { status: string; present: readonly string[] };
  }
}
