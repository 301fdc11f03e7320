import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Person } from '@/lib/domain/shop/rows';
import { loadCar } from '@/lib/server/load/car';
import { loadShop } from '@/lib/server/load/shop';
import { boardView } from '@/lib/server/queries/board';
import { dateText, initialsOf } from '@/lib/server/queries/board/words';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
beforeAll(async () => {
  shop = await StoredShop.open();
});
afterAll(() => shop.close());

const person = async (id: string): Promise<Person> => {
  const found = (await loadShop(shop.db)).people[id];
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};

const carOn = async (id: string, who = 'leo') => {
  const view = await boardView(shop.db, await person(who));
  const car = view.groups.flatMap(({ cars }) => cars).find((one) => one.id === id);
  if (car === undefined) throw new Error(`no ${id} on the board`);
  return { view, car };
};

describe('an empty floor', () => {
  test('tells who may begin a car where to do it, and others who does', async () => {
    const lead = await boardView(shop.db, await person('leo'));
    expect(lead.groups).toEqual([]);
    expect(lead.empty).toMatchObject({ href: '/set-up', act: 'Begin a car' });
    const technician = await boardView(shop.db, await person('tom'));
    expect(technician.empty?.href).toBeNull();
    expect(technician.mover).toEqual({ may: false, says: 'Moving a car is for a lead: Leo.' });
  });
});

describe('a car on the board', () => {
  test('shows what its gate wants, nested as the gate says it, each with its place', async () => {
    await shop.startCar('A-1');
    const { car, view } = await carOn('A-1');
    expect(view.says).toMatch(/^\w+day \d+ \w+\. One car, 0 loose ends\.$/);
    expect(car.stage).toBe(0);
    expect(car.version).toBe((await loadCar(shop.db, 'A-1'))?.version);
    expect(car.gate.map(({ code, href }) => [code, href])).toEqual([
      ['operation-unfinished', '/cars/A-1#operation:AX-010'],
      ['operation-unfinished', '/cars/A-1#operation:AX-020'],
    ]);
    expect(car.gate[0]).toMatchObject({
      says: 'Axle on (AX-010) is not started.',
      clears: 'Start and finish it.',
    });
    expect(car.gate[0]?.under?.map(({ href }) => href)).toEqual(['/cars/A-1/joints/J-1']);
    expect(car.way.map(({ rail, done, of }) => [rail, done, of])).toEqual([
      ['1o 1u', 0, 2],
      ['', 0, 1],
      ['', 0, 0],
    ]);
  });

  test('has an open gate, then a date behind it, and takes its room', async () => {
    await shop.carAtOpenGate('A-2');
    expect((await carOn('A-2')).car.gate).toEqual([]);
    await shop.must('leo', { type: 'advance-car', car: 'A-2', to: 'WH' });
    const { car, view } = await carOn('A-2');
    expect(car.stage).toBe(1);
    expect(car.way[0]).toMatchObject({ rail: '1f 1p', when: 'done 2 Mar', note: null });
    expect(view.groups[0]?.stages.map(({ room }) => room)).toEqual(['', 'taken', '']);
  });

  test('says what came open in a stage behind, on a dark tile', async () => {
    await shop.must('tom', { type: 'open-joint', car: 'A-2', joint: 'J-1', reason: 'to reach the line' });
    const { car } = await carOn('A-2');
    expect(car.way[0]).toMatchObject({ rail: '1O 1p', done: 1, of: 2, note: '1 open' });
    expect(car.way[0]?.says).toMatch(
      /^Axles, done 2 Mar: 0 of 1 joint, 1 of 1 check and 2 of 2 operations\. 1 open\.$/,
    );
  });

  test('has its crew and its hold on the plate', async () => {
    await shop.must('leo', { type: 'assign', car: 'A-2', job: 'stage:WH', add: ['tess'] });
    await shop.must('tom', { type: 'start-operation', car: 'A-2', operation: 'WH-010' });
    expect((await carOn('A-2')).car.crew.map(({ name }) => name)).toEqual(['Tess', 'Tom']);
    await shop.must('tess', { type: 'place-hold', car: 'A-2', scope: 'gate', reason: 'donor papers' });
    const { car } = await carOn('A-2', 'tom');
    expect(car.hold).toEqual({ mark: 'H-1', says: 'H-1 stands: donor papers' });
    expect(car.gate.some(({ code, act }) => code === 'hold-stands' && act === 'See the hold')).toBe(true);
  });
});

test('dates carry their year where it is not this one, and names their first and last letter', () => {
  expect(dateText('2026-02-28T23:30:00.000Z', '2026-11-25T08:00:00.000Z', 'Europe/Rome')).toBe('1 Mar');
  expect(dateText('2025-12-31T12:00:00.000Z', '2026-11-25T08:00:00.000Z', 'UTC')).toBe('31 Dec 2025');
  expect([initialsOf('Mara Mill'), initialsOf('Ada'), initialsOf('Łucja van der Berg')]).toEqual([
    'MM',
    'AD',
    'ŁB',
  ]);
});
