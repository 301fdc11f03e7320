/** The log in words: people by the names of then, and what was refused by what was asked for. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { logView } from '@/lib/server/queries/log/view';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open();
});
afterAll(() => shop.close());

const entries = async (of: string | null = null) => {
  const view = await logView(
    shop.db,
    { page: 1, kind: 'everything', by: null, of },
    '2026-03-02T18:00:00.000Z',
  );
  return view.days.flatMap(({ lines }) => lines.map(({ entry }) => entry));
};
const said = async (of: string | null = null) =>
  (await entries(of)).map(({ line, who }) => `${who.name}: ${line.thing} ${line.says}`);

test('a signature keeps the name that it was given under; what comes after has the new one', async () => {
  await shop.carAtOpenGate('C1');
  await shop.must('leo', { type: 'rename-person', person: 'tom', name: 'Tom Thorn' });
  await shop.must('tom', { type: 'add-note', car: 'C1', of: 'C1', text: 'swept' });
  const lines = await said();
  expect(lines).toContain('Tom: AX-010 Axle on is finished');
  expect(lines).toContain('Leo: Tom is called Tom Thorn from now on');
  expect(lines.filter((line) => line.startsWith('Tom Thorn:'))).toEqual(['Tom Thorn:  “swept”']);
});

test('other roles are told with those before', async () => {
  await shop.must('ada', { type: 'change-roles', person: 'tess', roles: ['technician', 'lead'] });
  expect(await said('shop')).toContain('Ada: Tess is now lead and technician; was technician');
});

test('what was refused says what was asked for, and its reasons stand below', async () => {
  await shop.startCar('C2');
  await shop.advance('C2');
  await shop.give('tom', { type: 'start-operation', car: 'C2', operation: 'AX-010' });
  await shop.give('tom', { type: 'take-over-operation', car: 'C2', operation: 'AX-010' });
  const refused = (await entries('C2')).filter(({ isRefused }) => isRefused);
  expect(refused.map(({ line }) => `${line.thing} ${line.says}`)).toEqual([
    'Take over AX-010 Axle on was refused',
    'Advance C2 to Wheels was refused',
  ]);
  expect(refused[0]?.brought).toEqual(['Tom Thorn is on Axle on (AX-010) already. Go on with it.']);
});
