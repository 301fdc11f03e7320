/** Sawing on the real store: two people tap the same bar at one moment, of two servers; and what is written is what the log says. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { verifyLog } from '@/lib/server/log/verify';
import { cuttingView } from '@/lib/server/queries/cutting/view';
import { runCommand } from '@/lib/server/run-command';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

/** Two rails and a brace; lengths are invented. */
const FRAME = plan({
  items: {
    T60: { name: 'tube 60×40×3', cut: { lengths: ['6 m'], kerf: '3 mm', ends: '10 mm', keep: '300 mm' } },
  },
  stages: { FR: { name: 'Frame' } },
  operations: {
    'FR-010': {
      name: 'Rails',
      stage: 'FR',
      pieces: { T60: { rail: '2 × 2400 mm', brace: '900 mm' } },
    },
  },
});
const NOW = '2026-03-02T08:00:00.000Z';

let shop: StoredShop;
let other: Database;
beforeAll(async () => {
  shop = await StoredShop.open(FRAME);
  other = openDatabase(shop.at.url, 5);
  for (const car of ['C1', 'C2']) await shop.startCar(car);
  await shop.must('tess', { type: 'count-remnants', item: 'T60', lengths: ['1240 mm', '910 mm'] });
});
afterAll(async () => {
  await other.$disconnect();
  await shop.close();
});

const of = (car: string, piece: string, length: string, count: number) => ({ car, piece, length, count });

test('the same bar tapped by two at once is sawn once; the other is told, and the rack has what is left', async () => {
  const bars = [
    { from: 'rest', length: '1240 mm', pieces: [of('C1', 'brace', '900 mm', 1)] },
    { from: 'new', length: '6 m', pieces: [of('C1', 'rail', '2400 mm', 1), of('C2', 'rail', '2400 mm', 1)] },
  ] as const;
  const [tom, tess] = ['tom', 'tess'].map((person) =>
    shop.given(person, { type: 'saw-bars', item: 'T60', bars }),
  );
  if (tom === undefined || tess === undefined) throw new Error('nobody');
  const answers = await Promise.all([
    runCommand(shop.db, 'UTC', tom),
    runCommand(other, 'UTC', tess),
    runCommand(other, 'UTC', tom),
    runCommand(shop.db, 'UTC', tess),
  ]);
  const outcomes = answers.map(({ outcome }) => outcome);
  expect(outcomes.toSorted()).toEqual(['accepted', 'accepted', 'refused', 'refused']);
  const refused = answers.find(({ outcome }) => outcome === 'refused');
  expect(refused).toMatchObject({ refusals: [{ code: 'rest-not-there' }, { code: 'cut-not-wanted' }] });
  for (const db of [shop.db, other]) {
    const { remnants, sawn } = await loadShop(db);
    // 1240 − 903 = 337, kept; 5980 − 2 × 2403 = 1174.
    expect(remnants['T60']?.lengths).toEqual(['1174 mm', '910 mm', '337 mm']);
    expect(Object.values(sawn).map(({ car, piece, count }) => [car, piece, count])).toEqual(
      expect.arrayContaining([
        ['C1', 'brace', 1],
        ['C1', 'rail', 1],
        ['C2', 'rail', 1],
      ]),
    );
  }
  expect((await verifyLog(other)).faults).toEqual([]);
});

test('the page asks for what is left under the same marks, and says what waits for its work and who looked', async () => {
  const { items, sawn } = await cuttingView(other, [], NOW);
  expect(items[0]?.marks.map(({ mark, count }) => [mark, count])).toEqual([
    ['A', 2],
    ['B', 1],
  ]);
  expect(sawn.map(({ car, part, count }) => [car.id, part, count])).toEqual([
    ['C1', 'rail', 1],
    ['C1', 'brace', 1],
    ['C2', 'rail', 1],
  ]);
  expect(items[0]?.rack.says).toMatch(/^3 rests in the rack: .*, counted .* by Tess, sawn since by T/u);
  await shop.must('tom', { type: 'recut-pieces', item: 'T60', pieces: [of('C1', 'rail', '2400 mm', 1)] });
  const again = await cuttingView(shop.db, [], NOW);
  expect(again.items[0]?.marks.map(({ mark, count }) => [mark, count])).toEqual([
    ['A', 3],
    ['B', 1],
  ]);
  await shop.must('tom', { type: 'start-operation', car: 'C1', operation: 'FR-010' });
  await shop.must('tom', { type: 'finish-operation', car: 'C1', operation: 'FR-010' });
  const done = await cuttingView(other, [], NOW);
  expect(done.sawn.map(({ car, part }) => [car.id, part])).toEqual([['C2', 'rail']]);
  expect((await verifyLog(shop.db)).faults).toEqual([]);
});
