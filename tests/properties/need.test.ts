/** Invariant 11: with what is needed in hand, every joint can be fitted. And what a sum of needs must be. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ZERO, add, compare, exact, subtract, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { doubtsOf } from '@/lib/domain/car/joint';
import { runningOpening } from '@/lib/domain/car/work';
import type { FastenerRow } from '@/lib/domain/car/joint-rows';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { demandOf } from '@/lib/domain/shop/demand';
import type { CarsNeed, DemandLine } from '@/lib/domain/shop/demand';
import { catalogueOf } from '@/lib/domain/shop/item';
import { carNeed, totalsOf } from '@/lib/domain/shop/need';
import type { Supply } from '@/lib/domain/shop/supply';
import { drive } from '@/tests/support/drive';
import { CARS } from '@/tests/support/game';
import type { Game, Step } from '@/tests/support/game';
import { ITEMS } from '@/tests/support/random-plan';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';

const CAR = CARS[0] ?? '';
type Totals = ReadonlyMap<string, Exact>;
type NeedOf = typeof carNeed;

const fail = (said: string, game: Game): never => {
  throw new Error(`invariant 11: ${said}\n${game.told()}`);
};

const catalogues = new WeakMap<PlanDocument, ReturnType<typeof catalogueOf>>();
const catalogueFor = (plan: PlanDocument): ReturnType<typeof catalogueOf> => {
  const found =
    catalogues.get(plan) ??
    catalogueOf([plan], { pin: { attrition: exact(1, 20) }, nut: { minimum: exact(10) } });
  catalogues.set(plan, found);
  return found;
};

const needAt = (game: Game, id: string, rule: NeedOf = carNeed): ReturnType<NeedOf> => {
  const car = game.car(id);
  const plan = game.plan(car);
  return rule(plan, car, game.world.shop, catalogueFor(plan.document));
};

// ---- what is really fitted, told from the log alone ----

/** A piece out of the box where the old one could not go in again, by the plan's words for the item. */
const isNewOfNecessity = (
  item: string,
  before: FastenerRow | undefined,
  badLots: ReadonlySet<string>,
): boolean => {
  const old = before?.[item];
  const reuse = ITEMS[item]?.reuse ?? 'always';
  if (old === undefined || old.spent || reuse === 'once fitted') return true;
  if (old.lot !== null && badLots.has(old.lot)) return true;
  const times = /^(\d+) times$/u.exec(reuse)?.[1];
  return times !== undefined && old.uses >= Number(times);
};

const countFitted =
  (into: Map<string, Exact>) =>
  ({ before, events, game }: Step): void => {
    for (const event of events) {
      if (event.type !== 'hardware-fitted' || event.car !== CAR) continue;
      const joint = game.plan(game.car(CAR)).joints.get(event.joint);
      const rows = before.cars[CAR]?.joints[event.joint]?.fasteners ?? {};
      const bad = new Set(
        Object.values(before.shop.lots).flatMap((lot) => (lot.quarantined === null ? [] : [lot.id])),
      );
      for (const [place, items] of Object.entries(event.fasteners))
        for (const [item, piece] of Object.entries(items)) {
          // What came off a donor goes in for the second time at once.
          const first = piece.lot !== null && before.shop.lots[piece.lot]?.donor !== undefined ? 2 : 1;
          const isAgain = piece === rows[place]?.[item] || piece.uses > first;
          if (isAgain || !isNewOfNecessity(item, rows[place], bad)) continue;
          const line = joint?.hardware.find((each) => each.item === item);
          const each =
            line === undefined
              ? 1
              : place === 'joint'
                ? line.quantity
                : line.quantity / (joint?.fasteners ?? 1);
          into.set(item, add(into.get(item) ?? ZERO, exact(each)));
        }
    }
  };

const said = (totals: Totals): string =>
  [...totals].map(([item, sum]) => `${item} ${toDecimalText(sum)}`).join(', ');

/** After any history: whatever the rest of the build takes was needed before it. */
const needIsEnough = (rule: NeedOf, count: { delivered: number; equal: number }): fc.IProperty<unknown> =>
  fc.property(randomHistory, fc.nat({ max: 60 }), (history, most) => {
    let watch: (step: Step) => void = () => undefined;
    const game = playHistory(RULES, history, (step) => {
      watch(step);
    });
    if (game.car(CAR).delivered) return;
    const need = totalsOf(needAt(game, CAR, rule).lines);
    const fitted = new Map<string, Exact>();
    watch = countFitted(fitted);
    const { isDelivered } = drive(game, RULES, CAR, most * 4);
    for (const [item, taken] of fitted)
      if (compare(taken, need.get(item) ?? ZERO) > 0)
        fail(`${toDecimalText(taken)} ${item} fitted, needed were ${said(need)}`, game);
    if (!isDelivered) return;
    count.delivered += 1;
    if ([...need].every(([item, sum]) => item === 'pin' || compare(sum, fitted.get(item) ?? ZERO) === 0))
      count.equal += 1;
  });

/** Opening spends and never gives back. */
const openingNeverLowers = (rule: NeedOf): fc.IProperty<unknown> =>
  fc.property(randomHistory, fc.nat({ max: 99 }), fc.nat({ max: 7 }), (history, drawn, which) => {
    const game = playHistory(RULES, history);
    const car = game.car(CAR);
    const joints = [...game.plan(car).joints.values()];
    const joint = joints[drawn % Math.max(1, joints.length)];
    // Where the plan means to open it now, that one is counted already, as late as the plan has it.
    if (joint === undefined || car.delivered || runningOpening(car, joint) !== null) return;
    const before = totalsOf(needAt(game, CAR, rule).lines);
    // To open one fastener of a doubted joint may settle the doubt of all: that is a renewal, and counted.
    const isDoubted = doubtsOf(car.joints[joint.stateKey], game.world.shop).some(
      ({ remedy }) => remedy === 'renew',
    );
    const fasteners = joint.order.filter((each) => isDoubted || (which >> (each - 1)) % 2 === 0);
    game.must('tim', { type: 'open-joint', car: CAR, joint: joint.stateKey, fasteners });
    const after = totalsOf(needAt(game, CAR, rule).lines);
    for (const [item, sum] of before)
      if (compare(after.get(item) ?? ZERO, sum) < 0)
        fail(`opening ${joint.stateKey} made ${said(before)} into ${said(after)}`, game);
  });

const supplies = fc.array(
  fc.record({
    item: fc.constantFrom(...Object.keys(ITEMS)),
    quantity: fc.integer({ min: 1, max: 12 }).map((count) => exact(count, 2)),
    kind: fc.nat({ max: 2 }),
    day: fc.integer({ min: 1, max: 28 }),
    keeps: fc.boolean(),
    onlyFor: fc.constantFrom(null, ...CARS),
  }),
  { maxLength: 8 },
);

const supplyOf = (drawn: typeof supplies extends fc.Arbitrary<infer T> ? T : never): readonly Supply[] =>
  drawn.map(({ item, quantity, kind, day, keeps, onlyFor }, index): Supply => {
    const date = `2026-11-${String(day).padStart(2, '0')}`;
    const name = `S-${String(index)}`;
    const source =
      kind === 0
        ? ({ kind: 'lot', lot: name } as const)
        : kind === 1
          ? ({ kind: 'donor', lot: name, car: CARS[0] ?? '' } as const)
          : ({ kind: 'order', order: name, due: date } as const);
    return { item, quantity, source, goodUntil: keeps ? null : date, onlyFor };
  });

const sum = (list: readonly { readonly quantity: Exact }[]): Exact =>
  list.reduce((total, { quantity }) => add(total, quantity), ZERO);

type DemandOf = typeof demandOf;

/** What is bought for all cars is what each of them needs, no more and no less, and nothing is given out twice. */
const sumsHold = (rule: DemandOf): fc.IProperty<unknown> =>
  fc.property(randomHistory, supplies, (history, drawn) => {
    const game = playHistory(RULES, history);
    const cars = CARS.map((id): CarsNeed => ({
      car: game.car(id),
      plan: game.plan(game.car(id)),
      need: needAt(game, id),
    }));
    const supply = supplyOf(drawn);
    const at = { today: '2026-11-05', minutesADay: 420, days: { shut: [6, 7], closed: [] } };
    const demand = rule(cars, supply, catalogueFor(history.plan), at);
    const byCar = totalsOf(cars.flatMap(({ need }) => need.lines));
    const seen = new Map(demand.map((line): [string, DemandLine] => [line.item, line]));
    for (const [item, need] of byCar)
      if (compare(seen.get(item)?.need ?? ZERO, need) !== 0) fail(`${item} does not add up`, game);
    for (const line of demand) {
      const { item, need, allocations, short, left, minimum, buy } = line;
      for (const each of [need, left, line.demand])
        if (compare(each, ZERO) < 0) fail(`${item} is below zero`, game);
      if (compare(add(sum(allocations), sum(short)), need) !== 0)
        fail(`${item} is neither covered nor short`, game);
      if (compare(add(sum(allocations), left), sum(supply.filter((each) => each.item === item))) !== 0)
        fail(`${item} was given out twice`, game);
      // Demand met: every car has its own, and the shelf its minimum.
      const lacking = subtract(minimum, left);
      const wanted = add(sum(short), compare(lacking, ZERO) > 0 ? lacking : ZERO);
      if (compare(line.demand, wanted) !== 0 || compare(buy, line.demand) < 0)
        fail(`${item}: too little is bought`, game);
    }
  });

const withoutCause =
  (...kinds: string[]): NeedOf =>
  (...asked) => {
    const found = carNeed(...asked);
    return { ...found, lines: found.lines.filter(({ cause }) => !kinds.includes(cause.kind)) };
  };

/** A seed that meets each planted fault within a few histories: building a car on takes its time. */
const SOON = { ...untilRed(200), seed: 10 };

describe('invariant 11, need', () => {
  test('whatever the rest of a build takes was needed, and mostly no more', () => {
    const count = { delivered: 0, equal: 0 };
    fc.assert(needIsEnough(carNeed, count), runs(12));
    expect(count.delivered).toBeGreaterThan(3);
    // What a doubt asks to renew may clear itself before anybody opens the joint.
    expect(count.equal).toBeGreaterThan(count.delivered * 0.7);
  });

  test('opening a joint never lowers the need', () => {
    fc.assert(openingNeverLowers(carNeed), runs(50));
  });

  test('cars add up to the shop, and supply is given out once', () => {
    fc.assert(sumsHold(demandOf), runs(25));
  });

  test.each(['planned', 'opened', 'reopening', 'renew'])('a need without what is %s is seen', (kind) => {
    const found = fc.check(needIsEnough(withoutCause(kind), { delivered: 0, equal: 0 }), SOON);
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 11');
  });

  test('a need that forgets what was opened is seen', () => {
    const found = fc.check(openingNeverLowers(withoutCause('opened')), SOON);
    expect(found.failed).toBe(true);
  });

  test('a demand that forgets a car is seen', () => {
    const found = fc.check(
      sumsHold((cars, ...rest) => demandOf(cars.slice(1), ...rest)),
      untilRed(100),
    );
    expect(found.failed).toBe(true);
  });
});
