/** Kits on the real store: two people pick the same one at the same moment, two cars pick from one bin. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { loadFloor } from '@/lib/server/load/car';
import { loadStock } from '@/lib/server/load/stock';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

/** One joint of two nuts, invented. */
const NUTS = plan({
  items: { nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted', trace: 'lot' } },
  stages: { AX: { name: 'Axles' } },
  operations: { 'AX-010': { name: 'Axle on', stage: 'AX', body: ['snug J-1'] } },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      hardware: { nut: 2 },
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

const boxes = async (db: Database): Promise<unknown> =>
  Object.fromEntries((await loadFloor(db)).map(({ id, kits }) => [id, kits['AX-010']?.lines ?? []]));

test('two people of two servers pick one kit at once: both are in it once, and rows are what the log says', async () => {
  await shop.must('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 10 });
  for (const car of ['C1', 'C2']) await shop.startCar(car);
  const picks = ['C1', 'C1', 'C2'].map((car, at) =>
    shop.given(at === 0 ? 'tom' : 'tess', {
      type: 'pick-kit',
      car,
      operation: 'AX-010',
      lines: [{ item: 'nut', lot: 'L-1', quantity: '2' }],
    }),
  );
  // Each is sent twice, as a browser may.
  const answers = await Promise.all(
    [...picks, ...picks].map((each, at) => runCommand(at % 2 === 0 ? shop.db : other, 'UTC', each)),
  );
  expect(answers.map(({ outcome }) => outcome)).toEqual(answers.map(() => 'accepted'));
  const nuts = (quantity: string) => [{ item: 'nut', lot: 'L-1', quantity }];
  const expected = { C1: nuts('4'), C2: nuts('2') };
  expect(await boxes(shop.db)).toEqual(expected);
  expect(await boxes(other)).toEqual(expected);
  expect(await loadStock(other)).toMatchObject({ 'nut|L-1': { came: '10', went: '0' } });

  await shop.must('tom', { type: 'start-operation', car: 'C1', operation: 'AX-010' });
  await shop.must('tom', { type: 'snug-joint', car: 'C1', joint: 'J-1' });
  expect(await boxes(other)).toEqual({ C1: nuts('2'), C2: nuts('2') });
  await shop.must('tom', { type: 'finish-operation', car: 'C1', operation: 'AX-010' });
  expect(await boxes(other)).toEqual({ C1: [], C2: nuts('2') });
  expect(await loadStock(other)).toMatchObject({ 'nut|L-1': { came: '10', went: '2' } });
  expect((await verifyLog(other)).faults).toEqual([]);
});

test('a kit finds the bin down while another car fits from it: one event, sent twice, and the books of both are what the log says', async () => {
  await shop.must('leo', { type: 'receive-lot', lot: 'L-2', item: 'nut', quantity: 9 });
  await shop.must('tess', { type: 'start-operation', car: 'C2', operation: 'AX-010' });
  const short = shop.given('tom', {
    type: 'pick-kit',
    car: 'C3',
    operation: 'AX-010',
    lines: [{ item: 'nut', lot: 'L-2', quantity: '1' }],
    emptied: ['nut'],
  });
  const fits = shop.given('tess', {
    type: 'snug-joint',
    car: 'C2',
    joint: 'J-1',
    hardware: [{ item: 'nut', lot: 'L-2' }],
  });
  await shop.startCar('C3');
  const answers = await Promise.all([
    runCommand(shop.db, 'UTC', short),
    runCommand(other, 'UTC', fits),
    runCommand(other, 'UTC', short),
  ]);
  expect(answers.map(({ outcome }) => outcome)).toEqual(['accepted', 'accepted', 'accepted']);
  expect(await boxes(other)).toMatchObject({ C3: [{ item: 'nut', lot: 'L-2', quantity: '1' }] });
  const { 'nut|L-1': first, 'nut|L-2': second } = await loadStock(other);
  // What lay in the box of C2 was not in the bin that was looked into.
  expect([Number(first?.came) - Number(first?.went), first?.counted?.by]).toEqual([2, 'tom']);
  // Whichever was heard first: one nut is in the box, and two went into the car.
  expect(Number(second?.came) - Number(second?.went)).toBeLessThanOrEqual(1);
  expect((await verifyLog(other)).faults).toEqual([]);
});
