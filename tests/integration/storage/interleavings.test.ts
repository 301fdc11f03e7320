/** What two people do at the same moment: the rules hold as if one had come after the other (reliability F7, T8). */
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { evolveAll } from '@/lib/domain/evolve';
import { gateUnmet } from '@/lib/domain/gate';
import { compilePlan } from '@/lib/domain/plan/compile';
import { EMPTY_WORLD } from '@/lib/domain/world';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { runCommand } from '@/lib/server/run-command';
import { StoredShop, TWO_STAGES } from '@/tests/support/stored-shop';

const MANY_BAYS = {
  ...TWO_STAGES,
  revision: 'many bays',
  stages: { AX: { name: 'Axles' }, WH: { name: 'Wheels' } },
};

const eventsOf = async (db: Database, stream: string): Promise<readonly Event[]> => {
  const stored = await db.event.findMany({ where: { streamId: stream }, orderBy: { version: 'asc' } });
  return stored.map(({ body }) => (JSON.parse(body) as { event: Event }).event);
};

const later = async <Answer>(milliseconds: number, run: () => Promise<Answer>): Promise<Answer> => {
  await setTimeout(milliseconds);
  return run();
};

describe('advance against open', () => {
  const ROUNDS = 200;
  let shop: StoredShop;
  let other: Database;
  beforeAll(async () => {
    shop = await StoredShop.open(MANY_BAYS);
    other = openDatabase(shop.at.url, 5);
  });
  afterAll(async () => {
    await other.$disconnect();
    await shop.close();
  });

  test(`${String(ROUNDS)} times at once: never past a closed gate`, async () => {
    const seen = { passedFirst: 0, openedFirst: 0 };
    const shopEvents = await eventsOf(shop.db, 'shop');
    for (let round = 0; round < ROUNDS; round += 1) {
      const car = `R${String(round)}`;
      await shop.carAtOpenGate(car);
      const opening = shop.given('tom', { type: 'open-joint', car, joint: 'J-1', fasteners: [1] });
      const advancing = shop.given('leo', { type: 'advance-car', car, to: 'WH' });
      const both = [() => shop.run(opening), () => runCommand(other, 'UTC', advancing)] as const;
      const [first, second] = round % 2 === 0 ? both : ([both[1], both[0]] as const);
      // From neck and neck to a start so far ahead that the first is through: both orders, and what lies between.
      const ahead = Math.floor(round / 2) % 10;
      await Promise.all([first(), later(ahead, second)]);
      const events = await eventsOf(shop.db, `car:${car}`);
      const at = events.findIndex(({ type }) => type === 'gate-passed');
      expect(events.some(({ type }) => type === 'joint-opened')).toBe(true);
      if (at < 0) {
        seen.openedFirst += 1;
        continue;
      }
      seen.passedFirst += 1;
      const world = evolveAll(EMPTY_WORLD, [...shopEvents, ...events.slice(0, at)]);
      const standing = world.cars[car];
      if (standing === undefined) throw new Error(`no car ${car}`);
      const facts = {
        tools: world.shop.tools,
        lots: world.shop.lots,
        now: advancing.now,
        judgedAt: advancing.now,
      };
      expect(gateUnmet(compilePlan(MANY_BAYS, {}), standing, facts, 0)).toEqual([]);
    }
    // Both orders must have come about, or the rounds prove nothing.
    expect(seen.passedFirst).toBeGreaterThan(0);
    expect(seen.openedFirst).toBeGreaterThan(0);
  });
});

describe('a bay for one car', () => {
  let shop: StoredShop;
  beforeAll(async () => {
    shop = await StoredShop.open();
  });
  afterAll(() => shop.close());

  test('two cars at once: one gets it, the other is told who stands there', async () => {
    for (let round = 0; round < 10; round += 1) {
      const cars = [`A${String(round)}`, `B${String(round)}`];
      for (const car of cars) await shop.carAtOpenGate(car);
      const answers = await Promise.all(cars.map((car) => shop.advance(car)));
      expect(answers.map(({ outcome }) => outcome).sort()).toEqual(['accepted', 'refused']);
      const refused = answers.flatMap((answer) => (answer.outcome === 'refused' ? answer.refusals : []));
      expect(refused.map(({ code, soft }) => [code, soft])).toEqual([['room-full', true]]);
      const winner = cars[answers.findIndex(({ outcome }) => outcome === 'accepted')] ?? '';
      await shop.must('leo', { type: 'send-back', car: winner, to: 'AX', reason: 'the bay is wanted' });
    }
  });

  test('the lead may override it, with a reason', async () => {
    await shop.carAtOpenGate('C1');
    await shop.carAtOpenGate('C2');
    expect((await shop.advance('C1')).outcome).toBe('accepted');
    expect((await shop.advance('C2')).outcome).toBe('refused');
    const override = { code: 'room-full', reason: 'they fit nose to tail' };
    expect((await shop.advance('C2', { override })).outcome).toBe('accepted');
  });
});

describe('a room that two stages share', () => {
  let shop: StoredShop;
  beforeAll(async () => {
    const stages = { ...TWO_STAGES.stages, RO: { name: 'Road', sharesRoomWith: 'WH' } };
    shop = await StoredShop.open({ ...TWO_STAGES, revision: 'shared', stages });
  });
  afterAll(() => shop.close());

  test('whoever stands in either of them takes the room of both', async () => {
    await shop.carAtOpenGate('C1');
    await shop.carAtOpenGate('C2');
    expect((await shop.advance('C1')).outcome).toBe('accepted');
    await shop.must('tom', { type: 'start-operation', car: 'C1', operation: 'WH-010' });
    await shop.must('tom', { type: 'remove-stopgap', car: 'C1', stopgap: 'G-1' });
    await shop.must('tom', { type: 'finish-operation', car: 'C1', operation: 'WH-010' });
    await shop.must('leo', { type: 'advance-car', car: 'C1', to: 'RO' });
    expect(await shop.advance('C2')).toMatchObject({
      outcome: 'refused',
      refusals: [{ code: 'room-full', details: { cars: ['C1'] } }],
    });
  });
});

describe('a person or a tool taken away while somebody signs', () => {
  let shop: StoredShop;
  beforeAll(async () => {
    shop = await StoredShop.open();
  });
  afterAll(() => shop.close());

  test('whoever is removed has signed before it, or is refused', async () => {
    for (let round = 0; round < 20; round += 1) {
      const person = `temp${String(round)}`;
      const car = `P${String(round)}`;
      await shop.must('leo', { type: 'add-person', person, name: person, roles: ['technician'] });
      await shop.startCar(car);
      const [signed] = await Promise.all([
        shop.give(person, { type: 'start-operation', car, operation: 'AX-010' }),
        shop.give('leo', { type: 'remove-person', person }),
      ]);
      const order = await shop.db.event.findMany({
        where: { OR: [{ streamId: `car:${car}`, type: 'operation-started' }, { type: 'person-removed' }] },
        orderBy: { position: 'desc' },
        take: 2,
        select: { type: true },
      });
      if (signed.outcome === 'accepted')
        expect(order.map(({ type }) => type)).toEqual(['person-removed', 'operation-started']);
      else expect(signed).toMatchObject({ refusals: [{ code: 'unknown-person' }] });
    }
  });
});
