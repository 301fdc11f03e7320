/** The demo in a real database is the demo as it was played: row for row, also when its making was cut off. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ZERO, add, toNumber } from '@/lib/domain/base/exact';
import type { Claim } from '@/lib/domain/commands';
import type { CarEvent } from '@/lib/domain/events';
import { workSpans } from '@/lib/domain/hours';
import { rateOn } from '@/lib/domain/shop/rates';
import { pricesOf } from '@/lib/domain/shop/unit-price';
import { drawnBy } from '@/lib/domain/stock-half';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { loadCar, loadFloor } from '@/lib/server/load/car';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { verifyLog } from '@/lib/server/log/verify';
import { costView } from '@/lib/server/queries/cost';
import { hardwareView } from '@/lib/server/queries/hardware';
import { runCommand } from '@/lib/server/run-command';
import { seedDemo } from '@/seed/demo';
import { demoPlans } from '@/seed/demo-plans';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { CLEARING_DAY } from '@/tests/support/clearing-day';
import type { CostRow } from '@/lib/wire/views/cost';
import { demoOn } from '@/tests/support/demo';
import { freshDatabase } from '@/tests/support/postgres';
import type { FreshDatabase } from '@/tests/support/postgres';
import { differences } from './differences';

const TODAY = '2026-11-25';
const { lines, world } = demoOn(TODAY);

let place: FreshDatabase;
let db: Database;

/** Three thousand commands; on a machine that does other things as well they take their time. */
const PATIENCE = 240_000;

beforeAll(async () => {
  place = await freshDatabase();
  const cutOff = (line: string): void => {
    if (line === 'C54-012 enters AX') throw new Error('pulled the plug');
  };
  const first = openDatabase(place.url, 4);
  await expect(seedDemo(first, cutOff, { today: TODAY })).rejects.toThrow('pulled the plug');
  await first.$disconnect();
  // Begun again on another day, it stays on the one that it was begun for.
  const second = openDatabase(place.url, 4);
  await seedDemo(second, () => undefined, { today: '2026-12-01' });
  await second.$disconnect();
  // A client of its own, so that what is read was really stored.
  db = openDatabase(place.url, 4);
}, PATIENCE);

afterAll(async () => {
  await db.$disconnect();
  await place.drop();
});

test('every car is as it was played', async () => {
  const cars = await loadFloor(db);
  expect(cars.map(({ id }) => id)).toEqual([
    'C54-011',
    'C54-012',
    'C54-013',
    'C54-014',
    'C54-015',
    'LGT-001',
  ]);
  for (const car of cars) expect(car).toEqual(world.cars[car.id]);
});

test('the shop is as it was played, and is called the demo', async () => {
  expect(await loadShop(db)).toEqual(world.shop);
  expect(await shopSetting(db)).toEqual({ name: 'Quernmill Coachworks', zone: 'Europe/London', demo: true });
});

test('every line is in the log once, with its answer', async () => {
  const stored = await db.command.findMany({ select: { id: true, outcome: true } });
  const meant = lines.map(({ command, refused }) => [
    command.id,
    refused === undefined ? 'accepted' : 'refused',
  ]);
  expect(new Map(stored.map(({ id, outcome }) => [id, outcome]))).toEqual(
    new Map(meant as [string, string][]),
  );
  expect((await verifyLog(db)).faults).toEqual([]);
});

test('everybody of the demo has a password and a PIN', async () => {
  const found = await db.credential.findMany({ orderBy: { person: 'asc' } });
  expect(found.map(({ person }) => person)).toEqual(DEMO_SIGN_INS.map(({ person }) => person).toSorted());
  expect(found.every(({ passwordHash, pinHash }) => passwordHash !== null && pinHash !== null)).toBe(true);
});

test.each(DEMO_SIGN_INS.map(({ person }) => person))(
  'every screen says the same of the six cars to %s',
  async (person) => {
    expect(await differences(db, person, lines.at(-1)?.now ?? '')).toEqual([]);
  },
);

test('the gate of C54-012 is cleared in the database as it is in play, and passed', async () => {
  const answers: string[] = [];
  for (const [index, { by: actor, claim }] of CLEARING_DAY.entries()) {
    const now = new Date(Date.parse(lines.at(-1)?.now ?? '') + (index + 1) * 600_000).toISOString();
    const answer = await runCommand(db, 'Europe/London', {
      command: { id: `day-${String(index)}`, doneAt: now, claim },
      actor,
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    answers.push(answer.outcome);
  }
  expect(answers).toEqual(
    CLEARING_DAY.map(({ refused }) => (refused === undefined ? 'accepted' : 'refused')),
  );
  expect((await loadCar(db, 'C54-012'))?.stage).toBe(6);
});

const given = async (on: Database, actor: string, claim: Claim, now: string): Promise<void> => {
  const command = { id: `given-${now}`, doneAt: now, claim };
  const from = { present: null, device: null, lastContact: null, isInOrder: true };
  const answer = await runCommand(on, 'Europe/London', { command, actor, ...from, now });
  expect(answer.outcome).toBe('accepted');
};

test('the hardware demand adds up over the cars, and an opening adds what it spends', async () => {
  const last = Date.parse(lines.at(-1)?.now ?? '');
  const at = (minutes: number): string => new Date(last + 86_400_000 + minutes * 60_000).toISOString();
  const before = await hardwareView(db, true, at(0));
  const whole = before.items.filter(({ need, perCar }) =>
    [need, ...perCar].every((text) => /^-?\d*$/.test(text)),
  );
  expect(whole.length).toBeGreaterThan(50);
  for (const { key, need, perCar } of whole)
    expect(
      perCar.reduce((sum, text) => sum + Number(text), 0),
      key,
    ).toBe(Number(need));

  const claim = {
    type: 'open-joint',
    car: 'C54-011',
    joint: 'J-101@L',
    fasteners: [2, 3],
    reason: 'backplate bent',
  } as const;
  await given(db, 'tobit', claim, at(1));
  const after = await hardwareView(db, true, at(2));
  const nuts = after.items.find(({ key }) => key === 'NM-38F');
  const had = before.items.find(({ key }) => key === 'NM-38F');
  expect(Number(nuts?.need ?? 0) - Number(had?.need ?? 0)).toBe(2);
  expect(nuts?.reasons.filter(({ car }) => car.id === 'C54-011')).toMatchObject([
    { quantity: '2', place: 'Brake backplate to axle flange, left (J-101@L)', by: 'now' },
  ]);
  expect((await hardwareView(db, false, at(2))).items.every(({ buy }) => buy !== null)).toBe(true);

  const covered = after.items.find(({ from, held }) => from.length === 1 && held === null);
  const [, lot = ''] = /lot (\S+)$/.exec(covered?.from[0] ?? '') ?? [];
  await given(db, 'mara', { type: 'quarantine-lot', lot, reason: 'no marks on the heads' }, at(3));
  const apart = (await hardwareView(db, true, at(4))).items.find(({ key }) => key === covered?.key);
  expect(apart).toMatchObject({ held: covered?.shelf, from: [] });
  expect(parseFloat(apart?.shelf ?? '')).toBe(0);

  // A car that has left takes with it what was fitted: none of it comes back to the shelf.
  const shelves = async (on: Database): Promise<ReadonlyMap<string, string>> =>
    new Map((await hardwareView(on, true, at(5))).items.map(({ key, shelf }) => [key, shelf]));
  const stood = await shelves(db);
  const owner = openDatabase(place.ownerUrl, 1);
  await owner.$executeRaw`UPDATE car SET row = jsonb_set(row::jsonb, '{delivered}', 'true'::jsonb) WHERE id = 'C54-011'`;
  await owner.$disconnect();
  const fresh = openDatabase(place.url, 2);
  const left = await shelves(fresh);
  await fresh.$disconnect();
  for (const [key, shelf] of left) expect(shelf, key).toBe(stood.get(key));
});

const pence = (text: string): number =>
  text === '·' ? 0 : Math.round(Number(text.replace(/[£,+]/gu, '').replace('−', '-')) * 100);

test('what a car cost adds up over its stages, and is what its events took and its hours were worth', async () => {
  const last = Date.parse(lines.at(-1)?.now ?? '');
  const at = (minutes: number): string => new Date(last + 2 * 86_400_000 + minutes * 60_000).toISOString();
  for (const { id } of await loadFloor(db)) {
    const view = await costView(db, id, at(0));
    if (view === null) throw new Error(`no cost of ${id}`);
    const sum = (of: (row: CostRow) => string): number =>
      view.stages.reduce((all, row) => all + pence(of(row)), 0);
    expect(sum(({ total }) => total.soFar) + pence(view.scrap)).toBe(pence(view.total));
    expect(sum(({ total }) => total.planned)).toBe(pence(view.planned));
    expect(sum(({ material }) => material.soFar)).toBe(
      view.materials.reduce((all, { money }) => all + pence(money), 0),
    );
  }

  // Once more from the bare log: every drawing at its price, every stretch at the rate of its day.
  const shop = await loadShop(db);
  const priceOf = pricesOf({ ...shop, catalogue: {} });
  const bodies = await db.event.findMany({ where: { streamId: 'car:C54-011' }, orderBy: { version: 'asc' } });
  const events = bodies.map(({ body }) => (JSON.parse(body) as { readonly event: CarEvent }).event);
  // A part that is bought whole and came before parts were drawn from stock is one of it; the donor's own cost nothing.
  const asItems = Object.values(shop.items).map(({ isPart }) => isPart);
  const { parts = {} } = demoPlans().corbel.document;
  const isBought = (part: string): boolean =>
    !asItems.includes(part) && (parts[part]?.origin === 'bought' || parts[part]?.grade === 'replace');
  const partOf = (event: CarEvent) =>
    event.type === 'part-received' && isBought(event.part)
      ? [{ item: event.part, lot: null, quantity: '1' }]
      : [];
  const drawn = events.flatMap((event) =>
    (drawnBy(event) ?? partOf(event)).map((each) => ({ ...each, at: event.meta.at })),
  );
  const material = drawn.reduce((all, { item, lot, quantity, at: when }) => {
    const price = priceOf(item, lot, when);
    return all + (price === null ? 0 : toNumber(add(price.goods, price.freight)) * Number(quantity));
  }, 0);
  const hours = workSpans(events).reduce((all, { from, until }) => {
    const rate = toNumber(rateOn(shop.rates, from.slice(0, 10)) ?? ZERO);
    return all + ((Date.parse(until ?? at(0)) - Date.parse(from)) / 3_600_000) * rate;
  }, 0);
  const before = pence((await costView(db, 'C54-011', at(0)))?.total ?? '');
  expect(Math.abs(before - material - hours)).toBeLessThan(0.51);

  // What the shop takes out for it is its scrap, and nobody else's.
  const claim = {
    type: 'draw-stock',
    item: 'UC-45',
    quantity: '2',
    reason: 'lost',
    forCar: 'C54-011',
  } as const;
  await given(db, 'tobit', claim, at(1));
  const after = await costView(db, 'C54-011', at(0));
  expect(after?.scrapped.at(-1)).toMatchObject({ quantity: '2', says: 'lost' });
  // 18.75 for ten, and of 4.20 freight on goods of 50.05 its share: 4.0647 for two.
  expect(Math.abs(pence(after?.total ?? '') - before - 406.47)).toBeLessThan(1);
});

test('a shop of somebody’s own is left alone', async () => {
  const own = await freshDatabase();
  const theirs = openDatabase(own.url, 2);
  await theirs.shopSetting.create({ data: { name: 'Somebody’s', zone: 'UTC' } });
  await expect(seedDemo(theirs, () => undefined)).rejects.toThrow('Somebody’s');
  await theirs.$disconnect();
  await own.drop();
});
