/** Stock on the real store: cars draw from one lot at the same moment, somebody counts meanwhile (invariant 5, D34 to D37). */
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { onHand, stockKey, stockText, summed, withChange } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import { stockHalf } from '@/lib/domain/stock-half';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { loadStock } from '@/lib/server/load/stock';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

/** One joint of two nuts and two washers, invented. */
const NUTS = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted', trace: 'lot' },
    washer: { name: 'washer M10' },
  },
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: { 'AX-010': { name: 'Axle on', stage: 'AX', body: ['snug J-1'] } },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 2, washer: 2 },
    },
  },
});

let shop: StoredShop;
let other: Database;
beforeAll(async () => {
  shop = await StoredShop.open(NUTS);
  other = openDatabase(shop.at.url, 5);
});
afterAll(async () => {
  await other.$disconnect();
  await shop.close();
});

const told = async (): Promise<Stock> => {
  const stored = await shop.db.event.findMany({ orderBy: { position: 'asc' } });
  const events = stored.map(({ body }) => (JSON.parse(body) as { event: Event }).event);
  return summed(events.flatMap(stockHalf)).reduce(withChange, {});
};
const have = (stock: Stock, item: string, lot: string | null = null): string => {
  const row = stock[stockKey({ item, lot })];
  return row === undefined ? 'nothing' : stockText(onHand(row));
};

test('eight cars of two servers draw from one lot while others count, lose and receive: rows are the sums of all events', async () => {
  await shop.must('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 50 });
  await shop.must('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '5' }] });
  const cars = Array.from({ length: 8 }, (_, at) => `C${String(at)}`);
  const hardware = [{ item: 'nut', lot: 'L-1' }];
  for (const car of cars) {
    await shop.startCar(car);
    await shop.must('tom', { type: 'start-operation', car, operation: 'AX-010' });
    await shop.must('tom', { type: 'snug-joint', car, joint: 'J-1', hardware });
    await shop.must('tom', { type: 'finish-operation', car, operation: 'AX-010' });
  }
  for (let round = 0; round < 5; round += 1) {
    const acts = cars.map((car) =>
      shop.given('tom', { type: 'open-joint', car, joint: 'J-1', reason: 'once more' }),
    );
    await Promise.all(acts.map((each) => shop.run(each)));
    const fits = cars.map((car) => shop.given('tom', { type: 'snug-joint', car, joint: 'J-1', hardware }));
    const beside = [
      shop.given('tess', { type: 'count-stock', counts: [{ item: 'washer', counted: '3' }] }),
      shop.given('tess', { type: 'draw-stock', item: 'nut', lot: 'L-1', quantity: '1', reason: 'lost' }),
      shop.given('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '2.5' }] }),
      shop.given('leo', { type: 'put-away', places: [{ item: 'nut', lot: 'L-1', bin: '09C' }] }),
    ];
    const answers = await Promise.all(
      [...fits, ...beside].map((each, at) => runCommand(at % 2 === 0 ? shop.db : other, 'UTC', each)),
    );
    expect(answers.filter(({ outcome }) => outcome !== 'accepted')).toEqual([]);
    const stock = await loadStock(shop.db);
    expect(stock).toEqual(await told());
    for (const row of Object.values(stock)) expect(Number(stockText(onHand(row)))).toBeGreaterThanOrEqual(0);
  }
  expect((await verifyLog(other)).faults).toEqual([]);
});

test('a row that somebody changed by hand is found', async () => {
  const root = new pg.Client({ connectionString: shop.at.superUrl });
  await root.connect();
  try {
    await root.query(`UPDATE stock SET row = row || '{"went": "0"}' WHERE id = 'nut|L-1'`);
    expect((await verifyLog(other)).faults).toEqual([
      { stream: 'shop', version: null, says: 'row stock nut|L-1 says something else than the log' },
    ]);
    for (const sql of [
      `UPDATE stock SET row = row || '{"went": "-1"}' WHERE id = 'nut|L-1'`,
      `INSERT INTO stock (id, row) VALUES ('nut|L-9', '{"item":"nut","lot":"L-9","came":"1","went":"0"}')`,
      `INSERT INTO stock (id, row) VALUES ('else', '{"item":"nut","lot":null,"came":"1","went":"0"}')`,
      `INSERT INTO bin (id, row) VALUES ('nut', '{"bin":"by the door"}')`,
    ])
      await expect(root.query(sql)).rejects.toThrow();
  } finally {
    await root.end();
  }
});

test('the same id twice at once takes once', async () => {
  const before = have(await loadStock(shop.db), 'nut', 'L-1');
  const act = shop.given('tess', { type: 'put-back', item: 'nut', lot: 'L-1', quantity: '4' });
  await Promise.all(Array.from({ length: 8 }, (_, at) => runCommand(at % 2 ? shop.db : other, 'UTC', act)));
  expect(Number(have(await loadStock(shop.db), 'nut', 'L-1')) - Number(before)).toBe(4);
});
