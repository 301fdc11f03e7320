/**
 * Reads of the need while commands run: in each of them every car's lines add up to the line of all cars, and what a car still
 * needs and what stands in it is what its plan says, however the moment was cut. `SLIPMARK_READS=10000` reads as often.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ZERO, add, exact, toDecimalText } from '@/lib/domain/base/exact';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { needNow } from '@/lib/server/load/need';
import { runCommand } from '@/lib/server/run-command';
import { plan } from '@/tests/support/shop';
import { MORNING, StoredShop } from '@/tests/support/stored-shop';

const READS = Number(process.env.SLIPMARK_READS ?? 250);
const CARS = 6;
const NUTS = 4;

/** Nuts that are spent as soon as they are fitted, so that every opening needs them again. Invented. */
const PLAN = plan({
  items: { nut: { name: 'insert lock nut M10 class 8', reuse: 'once fitted' } },
  stages: { AX: { name: 'Axles' } },
  operations: { 'AX-010': { name: 'Axle on', stage: 'AX', body: ['snug J-1'] } },
  joints: {
    'J-1': {
      name: 'Spring eye',
      fasteners: NUTS,
      method: 'firm',
      torque: 'no value published',
      hardware: { nut: NUTS },
    },
  },
});

let shop: StoredShop;
let other: Database;
beforeAll(async () => {
  shop = await StoredShop.open(PLAN);
  other = openDatabase(shop.at.url, 5);
});
afterAll(async () => {
  await other.$disconnect();
  await shop.close();
});

test(`${String(READS)} reads beside two servers at work: each adds up`, { timeout: 600_000 }, async () => {
  const cars = Array.from({ length: CARS }, (_, at) => `C${String(at)}`);
  for (const car of cars) {
    await shop.startCar(car);
    await shop.must('tom', { type: 'start-operation', car, operation: 'AX-010' });
    await shop.must('tom', { type: 'snug-joint', car, joint: 'J-1' });
    await shop.must('tom', { type: 'finish-operation', car, operation: 'AX-010' });
  }
  const seen = { reads: 0, acts: 0, sums: new Set<string>() };
  const isOver = (): boolean => seen.reads >= READS;
  const work = async (hand: number): Promise<void> => {
    for (let turn = hand; !isOver(); turn += 2) {
      const car = cars[turn % CARS] ?? 'C0';
      const db = hand === 0 ? shop.db : other;
      const opening = shop.given('tom', {
        type: 'open-joint',
        car,
        joint: 'J-1',
        fasteners: [1 + (turn % NUTS)],
      });
      const fitting = shop.given('tom', { type: 'snug-joint', car, joint: 'J-1' });
      for (const act of [opening, fitting]) {
        const { outcome } = await runCommand(db, 'UTC', act);
        expect(outcome).toBe('accepted');
        seen.acts += 1;
      }
    }
  };
  const look = async (db: Database): Promise<void> => {
    while (!isOver()) {
      seen.reads += 1;
      const { demand, world } = await needNow(db, MORNING);
      const line = demand.find(({ item }) => item === 'nut');
      const lines = line?.lines ?? [];
      expect(line?.need ?? ZERO).toEqual(lines.reduce((sum, { quantity }) => add(sum, quantity), ZERO));
      seen.sums.add(toDecimalText(line?.need ?? ZERO));
      for (const car of cars) {
        const needed = lines
          .filter((each) => each.car === car)
          .reduce((sum, { quantity }) => add(sum, quantity), ZERO);
        const fasteners = Object.values(world.cars[car]?.joints['J-1']?.fasteners ?? {});
        const standing = fasteners.filter((row) => row['nut']?.spent === false).length;
        expect(add(needed, exact(standing))).toEqual(exact(NUTS));
      }
    }
  };
  await Promise.all([work(0), work(1), look(shop.db), look(other)]);
  // It saw cars whole and cars that were open.
  expect(seen.sums.size).toBeGreaterThan(1);
  expect(seen.acts).toBeGreaterThan(READS / 10);
});
