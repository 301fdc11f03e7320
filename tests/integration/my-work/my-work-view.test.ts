import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadShop } from '@/lib/server/load/shop';
import { myWorkView } from '@/lib/server/queries/my-work';
import { verifyView } from '@/lib/server/queries/verify';
import type { MyWorkView } from '@/lib/wire/views/my-work';
import { plan } from '@/tests/support/shop';
import { StoredShop } from '@/tests/support/stored-shop';

const PLAN = plan({
  items: {
    nut: { name: 'insert lock nut M10 class 8', reuse: 'once final', trace: 'lot' },
    washer: { name: 'washer M10' },
  },
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
  operations: {
    'AX-010': { name: 'Axle on', stage: 'AX', body: ['final J-1'] },
    'AX-020': { name: 'Look', stage: 'AX' },
    'AX-030': { name: 'Lines on', stage: 'AX', needs: ['AX-010'] },
    'WH-010': { name: 'Wheels on', stage: 'WH' },
  },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: 2,
      method: 'click',
      torque: '40 ± 4 N·m',
      source: 'invented',
      critical: true,
      verify: 'seen',
      hardware: { nut: 2, washer: 4 },
    },
  },
});

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open(PLAN);
  await shop.startCar('A-1');
  await shop.startCar('A-2');
});
afterAll(() => shop.close());

const NOW = '2026-03-02T10:00:00.000Z';
const person = async (id: string) => {
  const found = (await loadShop(shop.db)).people[id];
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};
const seenBy = async (who: string): Promise<MyWorkView> => myWorkView(shop.db, await person(who), null, NOW);
const told = ({ lists }: MyWorkView) =>
  Object.fromEntries(
    lists.map(({ id, lines }) => [id, lines.map(({ car, name, why }) => `${car.id} ${name}: ${why}`)]),
  );

describe('what is whose, and what comes first', () => {
  test('what was given to nobody is open to anybody, and nothing of it is opened', async () => {
    const view = await seenBy('tom');
    expect(Object.keys(told(view))).toEqual(['anybody']);
    expect(view.opened).toBeNull();
  });

  test('a job of one’s own comes before those of one’s stages, and what waits after what is ready', async () => {
    await shop.must('leo', { type: 'assign', car: 'A-1', job: 'stage:AX', add: ['tom'] });
    await shop.must('leo', { type: 'assign', car: 'A-2', job: 'operation:AX-020:1', add: ['tom'] });
    const view = await seenBy('tom');
    expect(told(view)).toMatchObject({
      next: [
        'A-2 AX-020 Look: given to you',
        'A-1 AX-010 Axle on: your stage',
        'A-1 AX-020 Look: your stage',
      ],
      waiting: ['A-1 AX-030 Lines on: your stage'],
    });
    expect(view.opened).toMatchObject({ id: 'operation:AX-020:1', car: { id: 'A-2' } });
    const waits = view.lists.find(({ id }) => id === 'waiting')?.lines[0]?.waits;
    expect(waits?.map(({ code, href }) => [code, href])).toEqual([
      ['operation-unfinished', '/cars/A-1#operation:AX-010'],
    ]);
  });

  test('what was given to another is not offered', async () => {
    const view = await seenBy('tess');
    expect(JSON.stringify(told(view))).not.toContain('A-2 AX-020');
    expect(JSON.stringify(told(view))).not.toContain('A-1 AX-0');
  });
});

describe('one running clock', () => {
  test('on another car is refused, also where both are asked for at once', async () => {
    const answers = await Promise.all(
      ['A-1', 'A-2'].map((car) => shop.give('tom', { type: 'start-operation', car, operation: 'AX-020' })),
    );
    expect(answers.map(({ outcome }) => outcome).sort()).toEqual(['accepted', 'refused']);
    const refused = answers.find(({ outcome }) => outcome === 'refused');
    expect(refused).toMatchObject({ refusals: [{ code: 'clock-running', details: { person: 'tom' } }] });
    const view = await seenBy('tom');
    expect(view.clocks).toHaveLength(1);
    expect(view.clocks[0]).toMatchObject({ sinceText: '08:00' });
    expect(view.minutesToday).toBe(119);
    expect(view.lists[0]).toMatchObject({ id: 'mine', lines: [{ why: 'your clock runs', isOpened: true }] });
    for (const car of ['A-1', 'A-2'])
      await shop.must('tom', { type: 'pause-operation', car, operation: 'AX-020', leftAs: 'half' });
    expect((await seenBy('tom')).clocks).toEqual([]);
  });
});

describe('second eyes', () => {
  test('are asked of whoever had no hand in it, and the others are told why not', async () => {
    await shop.must('tom', { type: 'start-operation', car: 'A-1', operation: 'AX-010' });
    await shop.must('tom', {
      type: 'final-joint',
      car: 'A-1',
      joint: 'J-1',
      tool: 'T-02',
      setting: '40',
      passes: [[1, 2]],
    });
    const tess = await verifyView(shop.db, await person('tess'), NOW);
    expect(tess.mine).toMatchObject([
      { car: { id: 'A-1' }, lines: [{ waiting: 'waiting 1 h', gate: 'gate 1' }] },
    ]);
    expect(tess.others).toEqual([]);
    expect((await seenBy('tess')).eyes).toBe(1);
    const tom = await verifyView(shop.db, await person('tom'), NOW);
    expect(tom.mine).toEqual([]);
    expect(tom.others[0]?.lines[0]?.whyNot).toBe('You signed it. Ada, Leo and Tess can.');
    expect((await seenBy('tom')).eyes).toBe(0);
  });
});

test('hardware stands with its bin and lot, and with what the shelf lacks', async () => {
  const kit = async (): Promise<readonly string[]> =>
    (
      await myWorkView(shop.db, await person('tess'), { car: 'A-2', job: 'operation:AX-010:1' }, NOW)
    ).opened?.hardware.map(({ item, bin, lot, lacks }) =>
      [item, bin ?? 'no bin', lot ?? 'no lot', lacks].join(' '),
    ) ?? [];
  expect(await kit()).toEqual([
    'nut no bin no lot none on the shelf',
    'washer no bin no lot none on the shelf',
  ]);
  await shop.must('leo', { type: 'receive-lot', lot: 'L-1', item: 'nut', quantity: 50 });
  await shop.must('leo', { type: 'receive-stock', goods: [{ item: 'washer', quantity: '3' }] });
  await shop.must('tom', {
    type: 'put-away',
    places: [
      { item: 'nut', bin: '09C' },
      { item: 'washer', bin: '11c' },
    ],
  });
  expect(await kit()).toEqual(['nut 09C L-1 ', 'washer 11C no lot only 3 on the shelf']);
});
