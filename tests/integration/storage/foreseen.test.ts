/**
 * A command judged before its locks (`write/foreseen.ts`): whatever changed since, and even while it waits for a lock,
 * is seen. Two servers at one database: what one of them keeps, the other makes old.
 */
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
let other: Database;
let root: pg.Client;
beforeAll(async () => {
  shop = await StoredShop.open();
  other = openDatabase(shop.at.url, 5);
  root = new pg.Client({ connectionString: shop.at.superUrl });
  await root.connect();
});
afterAll(async () => {
  await root.end();
  await other.$disconnect();
  await shop.close();
});

type Claim = Parameters<StoredShop['given']>[1];
const elsewhere = (actor: string, claim: Claim) => runCommand(other, 'UTC', shop.given(actor, claim));
const note = (car: string, text = 'left wheel first'): Claim => ({
  type: 'add-note',
  car,
  of: 'AX-010',
  text,
});

/** Until this many wait for a lock of this database; gives what they wait for. */
const waiting = async (count: number): Promise<readonly string[]> => {
  const { rows } = await root.query<{ at: string }>(
    `SELECT wait_event AS at FROM pg_stat_activity
     WHERE datname = current_database() AND wait_event_type = 'Lock' ORDER BY query_start`,
  );
  return rows.length < count ? waiting(count) : rows.map(({ at }) => at);
};

/** Runs `first` while somebody else holds the car's stream and does `meanwhile`. */
const whileHeld = async <Answer>(
  car: string,
  first: () => Promise<Answer>,
  meanwhile: () => Promise<unknown>,
): Promise<Answer> => {
  await root.query('BEGIN');
  await root.query('SELECT FROM stream WHERE id = $1 FOR UPDATE', [`car:${car}`]);
  const running = first();
  await waiting(1);
  await meanwhile();
  await root.query('COMMIT');
  return running;
};

const sound = async (): Promise<void> => {
  expect((await verifyLog(other)).faults).toEqual([]);
};

test('a car that another server changed meanwhile is judged as it is now', async () => {
  await shop.startCar('C1');
  for (let turn = 0; turn < 5; turn += 1) {
    await shop.must('tom', note('C1', `here ${String(turn)}`));
    expect(await elsewhere('tess', note('C1', `there ${String(turn)}`))).toMatchObject({
      outcome: 'accepted',
      version: 3 + 2 * turn,
    });
  }
  await sound();
});

test('what this server keeps never refuses by itself', async () => {
  await shop.startCar('C2');
  const finish: Claim = { type: 'finish-operation', car: 'C2', operation: 'AX-020' };
  expect((await shop.give('tess', finish)).outcome).toBe('refused');
  for (const claim of [
    { type: 'start-operation', car: 'C2', operation: 'AX-020' },
    { type: 'pass-check', car: 'C2', check: 'K-1' },
    { type: 'place-stopgap', car: 'C2', stopgap: 'G-1' },
  ] as const)
    expect((await elsewhere('tess', claim)).outcome).toBe('accepted');
  expect((await shop.give('tess', finish)).outcome).toBe('accepted');
});

test('a person who is removed while their command waits for its car is no longer one', async () => {
  await shop.must('leo', { type: 'add-person', person: 'tam', name: 'Tam', roles: ['technician'] });
  await shop.startCar('C3');
  await shop.must('tam', note('C3'));
  const answer = await whileHeld(
    'C3',
    () => shop.give('tam', note('C3', 'again')),
    () => elsewhere('leo', { type: 'remove-person', person: 'tam' }),
  );
  expect(answer).toMatchObject({ outcome: 'refused', refusals: [{ code: 'unknown-person' }] });
});

test('a counted tool that is used up while a sign-off waits signs nothing more', async () => {
  await shop.must('leo', {
    type: 'add-tool',
    tool: 'T-03',
    name: 'click wrench',
    kind: 'click',
    low: '5',
    high: '100',
    unit: 'N·m',
    calibrated: { on: '2026-01-05', due: '2026-12-31' },
    cycleLimit: 2,
  });
  const signed = (car: string): Claim => ({
    type: 'final-joint',
    car,
    joint: 'J-1',
    tool: 'T-03',
    setting: '40',
    passes: [[1, 2]],
  });
  for (const [car, person] of [
    ['C4', 'tom'],
    ['C5', 'tess'],
  ] as const) {
    await shop.startCar(car);
    await shop.must(person, { type: 'start-operation', car, operation: 'AX-010' });
  }
  const answer = await whileHeld(
    'C4',
    () => shop.give('tom', signed('C4')),
    () => elsewhere('tess', signed('C5')),
  );
  expect(answer).toMatchObject({ outcome: 'refused', refusals: [{ code: 'tool-cycles-used-up' }] });
  expect(await shop.db.tool.findUnique({ where: { id: 'T-03' } })).toMatchObject({ used: 2 });
  await sound();
});

test('one id for two cars at once: one effect, and the other is told of the conflict', async () => {
  await shop.startCar('C6');
  await shop.startCar('C7');
  for (let round = 0; round < 20; round += 1) {
    const id = randomUUID();
    const before = await shop.db.event.count();
    const answers = await Promise.all(
      ['C6', 'C7'].map((car) => shop.give('tom', note(car, String(round)), { id })),
    );
    expect(answers.map(({ outcome }) => outcome).sort()).toEqual(['accepted', 'conflict']);
    expect(await shop.db.event.count()).toBe(before + 1);
  }
  await sound();
});

test('a twin that comes again is answered as before, and nothing is written twice', async () => {
  await shop.startCar('C8');
  const given = shop.given('tom', note('C8'));
  const [first, second] = [await shop.run(given), await shop.run(given)];
  expect(first).toMatchObject({ outcome: 'accepted', already: false, version: 2 });
  expect(second).toEqual({ ...first, already: true });
});

test('twins on the short way and the long one wait for each other at the id, whoever comes first', async () => {
  for (const [car, isShortFirst] of [
    ['C9', true],
    ['C10', false],
  ] as const) {
    await shop.startCar(car);
    const given = shop.given('tom', note(car));
    // The other server knows nothing of the car yet.
    const short = () => runCommand(shop.db, 'UTC', given);
    const long = () => runCommand(other, 'UTC', given);
    const twins: ReturnType<typeof short>[] = [];
    const answer = await whileHeld(car, isShortFirst ? short : long, async () => {
      twins.push(isShortFirst ? long() : short());
      expect([...(await waiting(2))].sort()).toEqual(['advisory', 'transactionid']);
    });
    expect([answer, ...(await Promise.all(twins))]).toEqual([
      { outcome: 'accepted', already: false, car, version: 2 },
      { outcome: 'accepted', already: true, car, version: 2 },
    ]);
  }
});
