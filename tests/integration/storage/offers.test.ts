/** The books of buying in the real store: judged by the released plans, refolded from the log, kept whole. Prices are invented. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import { loadShop } from '@/lib/server/load/shop';
import { verifyLog } from '@/lib/server/log/verify';
import { runCommand } from '@/lib/server/run-command';
import { StoredShop, TWO_STAGES } from '@/tests/support/stored-shop';

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open({ ...TWO_STAGES, items: { NUT: { name: 'lock nut M10', trace: 'lot' } } });
});
afterAll(() => shop.close());

const offer = (item: string) =>
  ({ supplier: 'H', item, pack: '50', prices: [{ fromPacks: 1, price: 420 }] }) as const;

test('a plan’s item is offered by a server that has not read the plan yet; rows and log say the same', async () => {
  await shop.must('leo', { type: 'set-supplier', supplier: 'H', name: 'Thornby', orderDays: [3], lead: 2 });
  const other = openDatabase(shop.at.url, 2);
  try {
    const second = await runCommand(other, 'UTC', shop.given('leo', { type: 'set-offer', ...offer('NUT') }));
    expect(second).toMatchObject({ outcome: 'accepted' });
  } finally {
    await other.$disconnect();
  }
  await shop.must('leo', { type: 'set-item', item: 'NUT', minimum: '20' });
  await shop.must('ada', { type: 'pin-line', item: 'NUT', supplier: 'H' });
  await shop.must('ada', { type: 'unpin-line', item: 'NUT' });
  await shop.must('ada', { type: 'set-rate', from: '2026-03-01', money: 3800 });
  const refused = await shop.give('leo', {
    type: 'import-offers',
    offers: [{ ...offer('NUT'), pack: '25' }, offer('GHOST')],
  });
  expect(refused).toMatchObject({
    outcome: 'refused',
    refusals: [{ code: 'unknown-thing', place: { row: 2 } }],
  });
  // As the store gives it back: the same once more is no news.
  const again = openDatabase(shop.at.url, 2);
  const before = (await loadShop(shop.db)).version;
  await runCommand(again, 'UTC', shop.given('leo', { type: 'set-offer', ...offer('NUT') }));
  await again.$disconnect();
  const { items, offers, pins, rates, version } = await loadShop(shop.db);
  expect(rates['2026-03-01']?.money).toBe(3800);
  expect(version).toBe(before);
  expect([Object.keys(items), Object.keys(offers), pins['NUT']?.pin]).toEqual([['NUT'], ['H/NUT/50'], null]);
  expect((await verifyLog(shop.db)).faults).toEqual([]);
});

test('nothing of it can be taken out by the app', async () => {
  for (const table of ['offer', 'supplier', 'line_pin', 'item', 'hour_rate'])
    await expect(shop.db.$executeRawUnsafe(`DELETE FROM ${table}`)).rejects.toThrow(/permission denied/);
});
