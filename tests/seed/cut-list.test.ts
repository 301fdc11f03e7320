/** What is cut for the demo's cars, against the table of lengths that the two models were drawn up with. Invented. */
import { describe, expect, test } from 'vitest';
import { ZERO, add, exact, multiply, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Car } from '@/lib/domain/car/rows';
import { compilePlan } from '@/lib/domain/plan/compile';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { laidBars } from '@/lib/domain/shop/cut-bars';
import { carCuts, cutLists } from '@/lib/domain/shop/cut-list';
import type { CutList } from '@/lib/domain/shop/cut-list';
import type { CutWanted } from '@/lib/domain/shop/cut-wanted';
import { catalogueOf } from '@/lib/domain/shop/item';
import { carNeed, totalsOf } from '@/lib/domain/shop/need';
import { solveCutting } from '@/lib/solve/cutting/solve';
import { PLANS, demoOn } from '@/tests/support/demo';

const { world, stage } = demoOn('2026-11-25');
const cars = Object.values(world.cars);
const planFor = (car: Car) => {
  const document = stage.plans[car.plan];
  if (document === undefined) throw new Error(`no plan of ${car.id}`);
  return compilePlan(document, car.options);
};
const [one] = cars.filter(({ id }) => id === 'C54-015');
if (one === undefined) throw new Error('no C54-015');

/** So many cars of which nothing is done. */
const fresh = (document: PlanDocument, count: number) => {
  const plan = compilePlan(document, one.options);
  const wanted = Array.from({ length: count }, (_, at) => ({ ...one, id: `N-${String(at)}`, operations: {} }))
    .map((car) => carCuts(plan, car))
    .flatMap((each) => each.wanted);
  return cutLists([plan], wanted).lists;
};
const problemOf = (item: string, list: readonly CutList[]) => {
  const found = list.find((each) => each.item === item);
  if (found?.problem === undefined || found.problem === null) throw new Error(`no list of ${item}`);
  return { list: found, problem: found.problem };
};
const sum = (wanted: readonly { readonly length: Exact; readonly count: number }[]): Exact =>
  wanted.reduce((all, { length, count }) => add(all, multiply(length, exact(count))), ZERO);

describe('new lengths, proved', () => {
  // By simple filling and by the bound of the material, as the table has them.
  test.each([
    ['T60', 1, 3],
    ['T60', 3, 7],
    ['T60', 5, 12],
    ['T25', 1, 2],
    ['T25', 3, 4],
    ['T25', 5, 7],
    ['T38', 1, 1],
    ['S40', 1, 1],
    ['BL-475', 1, 1],
    ['BL-475', 3, 1],
    ['FL-516', 1, 1],
  ])('%s for %i of the first model: %i', async (item, count, lengths) => {
    const { list, problem } = problemOf(item, fresh(PLANS.corbel.document, count));
    const { score, proved, plan } = await solveCutting(problem, 10);
    expect(score?.newLengths).toBe(lengths);
    expect(proved.newLengths).toBe(true);
    const { kerf } = problem;
    const bars = laidBars(problem, plan ?? [], list.marked);
    expect(bars).toHaveLength(lengths);
    // Each piece once, none over another, nothing beyond the bar.
    expect(bars.flatMap(({ pieces }) => pieces)).toHaveLength(
      list.marked.reduce((all, marked) => all + marked.count, 0),
    );
    for (const { pieces, ends, length, keep } of bars) {
      expect(pieces[0]?.from).toBe(ends);
      pieces.slice(1).forEach(({ from }, at) => expect(from).toBe((pieces[at]?.to ?? 0) + kerf));
      expect(pieces.at(-1)?.to).toBeLessThanOrEqual(length - ends);
      if (keep !== null) expect(keep.from + keep.length).toBe(length - ends);
    }
  });

  test('three cars’ brake lines come from one roll of 25 m, one car’s from one of 7.5 m', async () => {
    for (const [count, length] of [
      [1, 7500],
      [3, 25_000],
    ] as const) {
      const { problem } = problemOf('BL-475', fresh(PLANS.corbel.document, count));
      const answer = await solveCutting(problem, 10);
      expect(answer.score?.taken).toBe(length);
      expect(answer.proved.taken).toBe(true);
    }
  });

  test('the second model takes one length of frame rail more', async () => {
    const { problem } = problemOf('T60', fresh(PLANS.lintel.document, 1));
    const answer = await solveCutting(problem, 10);
    expect(answer.score?.newLengths).toBe(4);
  });
});

describe('the floor', () => {
  const found = cars.map((car) => ({ car, plan: planFor(car), cuts: carCuts(planFor(car), car) }));
  const wanted = found.flatMap(({ cuts }) => cuts.wanted);
  const { lists, withoutLengths } = cutLists(
    found.map(({ plan }) => plan),
    wanted,
  );

  test('the list shared by the second model’s first car, C54-014 and C54-015', () => {
    expect(withoutLengths).toEqual([]);
    const shared = lists
      .find(({ item }) => item === 'T25')
      ?.marked.flatMap((each) => each.cars.map(({ car }) => car));
    expect(new Set(shared)).toEqual(new Set(['C54-012', 'C54-013', 'C54-014', 'C54-015', 'LGT-001']));
    // The strap that cracked: its halves are cut once more, and no frame is.
    expect(wanted.filter(({ car }) => car === 'C54-014').map(({ piece }) => piece)).toContain(
      'tank strap half',
    );
    expect(lists.map(({ item }) => item)).not.toContain('T60');
  });

  test('what the lists hold is what the cars want, and what the need counts', () => {
    for (const list of lists) {
      expect(toNumber(sum(list.marked))).toBe(toNumber(sum(wanted.filter(({ item }) => item === list.item))));
      const inProblem = list.problem?.pieces.reduce((all, { length, count }) => all + length * count, 0);
      expect(inProblem).toBe(toNumber(sum(list.marked)) * (list.problem?.scale ?? 0));
    }
    const catalogue = catalogueOf(Object.values(stage.plans));
    for (const { car, plan, cuts } of found) {
      const need = totalsOf(carNeed(plan, car, world.shop, catalogue).lines);
      for (const item of new Set(cuts.wanted.map((each) => each.item))) {
        const own = toNumber(sum(cuts.wanted.filter((each) => each.item === item))) / 1000;
        expect(Math.abs(toNumber(need.get(item) ?? ZERO) - own), `${car.id} ${item}`).toBeLessThan(0.01);
      }
    }
  });

  test('what is finished asks for nothing, what is delivered neither', () => {
    for (const { car, plan, cuts } of found)
      for (const operation of new Set(cuts.wanted.map((each: CutWanted) => each.operation))) {
        const row = Object.values(one.operations)[0];
        if (row === undefined) throw new Error('nothing is finished');
        const operations = {
          ...car.operations,
          [operation]: { ...row, run: 1, status: 'finished' as const },
        };
        const after = carCuts(plan, { ...car, operations });
        expect(after.wanted).toEqual(cuts.wanted.filter((each) => each.operation !== operation));
        expect(carCuts(plan, { ...car, delivered: true }).wanted).toEqual([]);
      }
  });
});
