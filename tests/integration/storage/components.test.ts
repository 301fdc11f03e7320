/** Components on the real store: graded and sent side by side, robbed across two cars, attacked by raw SQL. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadCar } from '@/lib/server/load/car';
import { loadShop } from '@/lib/server/load/shop';
import { loadStock } from '@/lib/server/load/stock';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

/** Two donor parts and what holds one of them, invented. */
const DONOR = plan({
  stages: { EN: { name: 'Engine' } },
  operations: {
    'EN-130': { name: 'Starter, alternator', stage: 'EN', body: ['snug J-1', 'fit P-11', 'fit P-12'] },
  },
  joints: {
    'J-1': {
      name: 'starter to bell',
      fasteners: 2,
      method: 'firm',
      torque: 'no value published',
      firmMeans: 'no gap',
      hardware: { bolt: 2 },
    },
  },
  items: { bolt: { name: 'bolt 3/8-16 x 1 1/2 gr 5', reuse: '3 times', trace: 'lot' } },
  parts: {
    'P-11': { name: 'starter motor', origin: 'donor', grade: 'refurbish', outside: '6 d' },
    'P-12': { name: 'alternator', origin: 'donor', grade: 'refurbish', outside: '4 d' },
  },
});

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open(DONOR);
  for (const car of ['C1', 'C2']) await shop.startCar(car);
  await shop.must('leo', { type: 'set-supplier', supplier: 'works', name: 'Works', orderDays: [1], lead: 5 });
  await shop.must('leo', {
    type: 'open-trip',
    trip: '1',
    supplier: 'works',
    goes: '2026-03-02',
    due: '2026-03-09',
  });
});
afterAll(() => shop.close());

const partsOf = async (car: string) => {
  const row = await loadCar(shop.db, car);
  return { parts: row?.parts ?? {}, components: row?.components ?? {} };
};

test('two people grade one donor at once: each part as it was said, and rows are what the log says', async () => {
  const lists = (['P-11', 'P-12'] as const).flatMap((part) =>
    (['C1', 'C2'] as const).map((car, at) =>
      shop.given(at === 0 ? 'tom' : 'tess', {
        type: 'grade-parts',
        car,
        parts: [{ part, grade: 'refurbish', place: '4A' }],
      }),
    ),
  );
  const answers = await Promise.all([...lists, ...lists].map((each) => runCommand(shop.db, 'UTC', each)));
  expect(answers.map(({ outcome }) => outcome)).toEqual(answers.map(() => 'accepted'));
  const { components } = await partsOf('C2');
  expect(Object.entries(components).map(([part, { grade, by }]) => [part, grade, by])).toEqual([
    ['P-11', 'refurbish', 'tess'],
    ['P-12', 'refurbish', 'tess'],
  ]);
  expect((await verifyLog(shop.db)).faults).toEqual([]);
});

test('a part comes off another car only once that car has given it up for this one', async () => {
  const receive = { type: 'receive-part', car: 'C1', part: 'P-12', from: 'C2' } as const;
  expect((await shop.run(shop.given('tess', receive))).outcome).toBe('refused');
  await shop.must('tess', { type: 'take-part', car: 'C2', part: 'P-12', reason: 'C1 first', takenFor: 'C1' });
  await shop.must('tess', receive);
  expect((await partsOf('C1')).components['P-12']).toMatchObject({ from: 'C2', piece: 2 });
  // It is here, so that a second window's try is refused, whatever the giver says.
  expect((await shop.run(shop.given('tom', receive))).outcome).toBe('refused');
});

test('out and back; a bought one leaves its lot by the event that receives it', async () => {
  await shop.must('tom', {
    type: 'send-parts',
    car: 'C1',
    trip: '1',
    parts: [{ part: 'P-11', work: 'brushes' }],
  });
  expect((await partsOf('C1')).parts['P-11']?.state).toBe('out');
  await shop.must('tom', {
    type: 'return-parts',
    car: 'C1',
    trip: '1',
    parts: [{ part: 'P-11', how: 'done' }],
  });
  await shop.must('tess', { type: 'receive-part', car: 'C1', part: 'P-11', looked: 'draws 90 A' });
  await shop.must('leo', { type: 'receive-lot', lot: 'L-1', item: 'P-11', quantity: 1 });
  await shop.must('tom', { type: 'receive-part', car: 'C2', part: 'P-11', item: 'P-11', lot: 'L-1' });
  expect((await loadStock(shop.db))['P-11|L-1']).toMatchObject({ came: '1', went: '1' });
  expect((await verifyLog(shop.db)).faults).toEqual([]);
});

test('hardware off a donor goes into its own car, drawn by the event that fits it; what two say at once is two lots', async () => {
  await shop.must('leo', { type: 'record-donor', car: 'C1', year: '1967', model: 'Dunmore 1800' });
  const keep = (good: string) =>
    ({
      type: 'keep-donor-hardware',
      donorOf: 'C1',
      lines: [{ item: 'bolt', good, scrapped: '1', bin: '12A' }],
    }) as const;
  const both = await Promise.all([
    shop.run(shop.given('tom', keep('2'))),
    shop.run(shop.given('tess', keep('3'))),
  ]);
  expect(both.map(({ outcome }) => outcome)).toEqual(['accepted', 'accepted']);
  const { lots } = await loadShop(shop.db);
  const [first, second] = Object.values(lots).filter(({ item }) => item === 'bolt');
  expect([first?.donor, second?.donor]).toMatchObject([
    { car: 'C1', isShared: false },
    { car: 'C1', isShared: false },
  ]);
  const hardware = [{ item: 'bolt', lot: first?.id ?? '' }];
  await shop.must('tom', { type: 'start-operation', car: 'C1', operation: 'EN-130' });
  await shop.must('tess', { type: 'start-operation', car: 'C2', operation: 'EN-130' });
  const other = await shop.run(shop.given('tess', { type: 'snug-joint', car: 'C2', joint: 'J-1', hardware }));
  expect(other).toMatchObject({ outcome: 'refused' });
  await shop.must('tom', { type: 'snug-joint', car: 'C1', joint: 'J-1', hardware });
  expect((await loadStock(shop.db))[`bolt|${first?.id ?? ''}`]).toMatchObject({ went: '2' });
  expect((await shop.run(shop.given('tom', { ...keep('1'), donorOf: 'C9' }))).outcome).toBe('refused');
  await shop.must('leo', { type: 'share-donor-lot', lot: second?.id ?? '' });
  expect((await verifyLog(shop.db)).faults).toEqual([]);
});

test.each([
  [
    'a grade that is none',
    `UPDATE car_component SET row = jsonb_set(row, '{grade}', '"fair"') WHERE car = 'C1'`,
  ],
  [
    'a giver that is no car',
    `UPDATE car_component SET row = jsonb_set(row, '{from}', '"C9"') WHERE car = 'C1'`,
  ],
  [
    'a car that robs itself',
    `UPDATE car_component SET row = jsonb_set(row, '{from}', '"C1"') WHERE car = 'C1'`,
  ],
  ['a state that is none', `UPDATE car_part SET row = jsonb_set(row, '{state}', '"lost"') WHERE car = 'C1'`],
  ['a trip that is back before it went', `UPDATE trip SET row = jsonb_set(row, '{due}', '"2026-03-01"')`],
  [
    'a lot off the donor of no car',
    `UPDATE lot SET row = jsonb_set(row, '{donor,car}', '"C9"') WHERE row ? 'donor'`,
  ],
  [
    'a donor lot that does not say whose it may be',
    `UPDATE lot SET row = row #- '{donor,isShared}' WHERE row ? 'donor'`,
  ],
  ['a trip to nobody', `UPDATE trip SET row = jsonb_set(row, '{supplier}', '"nobody"')`],
])('the tables refuse %s', async (_, sql) => {
  await expect(shop.db.$executeRawUnsafe(sql)).rejects.toThrow();
});
