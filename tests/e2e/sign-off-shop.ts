/** Cars for the tests of the sign-off sheet: a plan with a joint of every kind, beside the demo's own cars. */
import { randomUUID } from 'node:crypto';
import type { Claim } from '@/lib/domain/commands';
import type { JointRow } from '@/lib/domain/car/joint-rows';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import { runCommand } from '@/lib/server/run-command';
import { freeClock } from '@/tests/support/free-clock';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { BENCH } from './sign-off-plan';

export const give = async (db: Database, actor: string, claim: Claim): Promise<void> => {
  const now = new Date().toISOString();
  const answer = await runCommand(db, 'UTC', {
    command: { id: randomUUID(), doneAt: now, claim },
    actor,
    present: null,
    device: null,
    lastContact: null,
    isInOrder: true,
    now,
  });
  if (answer.outcome !== 'accepted') throw new Error(`${claim.type}: ${JSON.stringify(answer)}`);
};

/** Tools whose lengths make round sums, lots good and bad, and the plan. */
export const furnish = async (db: Database): Promise<string> => {
  const kept = await keepPlan(db, BENCH);
  if (!('hash' in kept)) throw new Error(`the plan is there already: ${kept.taken}`);
  const lead = (claim: Claim): Promise<void> => give(db, 'mara', claim);
  await lead({ type: 'release-plan', plan: kept.hash });
  const calibrated = { on: '2026-01-05', due: '2027-12-31' };
  await lead({
    type: 'add-tool',
    tool: 'T-91',
    name: 'dial wrench',
    kind: 'dial',
    low: '20',
    high: '100',
    unit: 'N·m',
    length: { value: '362', unit: 'mm' },
    calibrated,
  });
  await lead({
    type: 'add-tool',
    tool: 'T-92',
    name: 'click wrench',
    kind: 'click',
    low: '5',
    high: '60',
    unit: 'N·m',
    length: { value: '300', unit: 'mm' },
    calibrated,
  });
  await lead({
    type: 'add-adapter',
    adapter: 'A-91',
    name: 'crow’s-foot 17 mm',
    extension: '38',
    unit: 'mm',
  });
  await lead({ type: 'receive-lot', lot: 'L-9101', item: 'NUT-10', quantity: 200 });
  await lead({ type: 'receive-lot', lot: 'L-9102', item: 'NUT-10', quantity: 200 });
  await lead({ type: 'quarantine-lot', lot: 'L-9102', reason: 'threads rough' });
  return kept.hash;
};

/** One car whose steering work runs, in Tobit's hands; the box is offered up by Oswin. What they were at is paused. */
export const beginCar = async (db: Database, plan: string, car: string): Promise<void> => {
  await give(db, 'mara', { type: 'start-car', car, plan, chassis: car, colour: 'Bottle green' });
  await Promise.all([freeClock(db, 'tobit'), freeClock(db, 'oswin')]);
  await give(db, 'tobit', { type: 'start-operation', car, operation: 'ST-070' });
  await give(db, 'oswin', { type: 'start-operation', car, operation: 'ST-080' });
};

export class SignOffShop {
  readonly shop: OpenedShop;
  readonly db: Database;
  private readonly plan: string;

  private constructor(shop: OpenedShop, db: Database, plan: string) {
    this.shop = shop;
    this.db = db;
    this.plan = plan;
  }

  static async open(): Promise<SignOffShop> {
    const shop = await openShop();
    const db = openDatabase(shop.database.url, 2);
    return new SignOffShop(shop, db, await furnish(db));
  }

  async close(): Promise<void> {
    await this.db.$disconnect();
    await this.shop.close();
  }

  begin(car: string): Promise<void> {
    return beginCar(this.db, this.plan, car);
  }

  give(actor: string, claim: Claim): Promise<void> {
    return give(this.db, actor, claim);
  }

  /** As the database has it; null = nobody has touched it. */
  async joint(car: string, key: string): Promise<JointRow | null> {
    const found = await this.db.carJoint.findUnique({
      where: { carId_key: { carId: car, key } },
      select: { row: true },
    });
    return found === null ? null : (found.row as unknown as JointRow);
  }

  /** How often the log tells of this, for this car. */
  async told(car: string, type: string): Promise<number> {
    const [found] = await this.db.$queryRaw<{ count: bigint }[]>`
      SELECT count(*) FROM event WHERE stream = ${`car:${car}`} AND type = ${type}`;
    return Number(found?.count ?? 0n);
  }
}
