/** The cut plan’s solver against counting all plans, and against textbooks. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareCutting, cuttingFaults, restOf } from '@/lib/domain/shop/cutting';
import type { CuttingProblem, CuttingScore } from '@/lib/domain/shop/cutting';
import { solveCutting } from '@/lib/solve/cutting/solve';
import { runs } from '@/tests/support/rules';

type Best = Pick<CuttingScore, 'newLengths' | 'taken'>;

/** The best of all plans, by putting each piece on each bar that is open or could be. */
const bestOfAll = ({ stock, pieces, kerf }: CuttingProblem): Best | null => {
  const waiting = pieces.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
  const left = new Map(stock.map(({ key, count }) => [key, count ?? Infinity]));
  const open: { stock: CuttingProblem['stock'][number]; lengths: number[] }[] = [];
  let best: Best | null = null;
  const place = (index: number, newLengths: number, taken: number): void => {
    if (
      best !== null &&
      (newLengths > best.newLengths || (newLengths === best.newLengths && taken >= best.taken))
    )
      return;
    const length = waiting[index];
    if (length === undefined) {
      best = { newLengths, taken };
      return;
    }
    for (const bar of open) {
      bar.lengths.push(length);
      if (restOf(kerf, bar.stock, bar.lengths) >= 0) place(index + 1, newLengths, taken);
      bar.lengths.pop();
    }
    for (const each of stock) {
      if ((left.get(each.key) ?? 0) <= 0 || restOf(kerf, each, [length]) < 0) continue;
      left.set(each.key, (left.get(each.key) ?? 0) - 1);
      open.push({ stock: each, lengths: [length] });
      place(index + 1, newLengths + (each.isRemnant ? 0 : 1), taken + each.length);
      open.pop();
      left.set(each.key, (left.get(each.key) ?? 0) + 1);
    }
  };
  place(0, 0, 0);
  return best;
};

const smallProblem = fc
  .record({
    bars: fc.array(fc.integer({ min: 12, max: 30 }), { minLength: 1, maxLength: 2 }),
    remnants: fc.array(
      fc.record({ length: fc.integer({ min: 3, max: 20 }), count: fc.integer({ min: 1, max: 2 }) }),
      {
        maxLength: 2,
      },
    ),
    pieces: fc.array(
      fc.record({ length: fc.integer({ min: 3, max: 12 }), count: fc.integer({ min: 1, max: 3 }) }),
      {
        minLength: 1,
        maxLength: 3,
      },
    ),
    kerf: fc.integer({ min: 0, max: 2 }),
    ends: fc.integer({ min: 0, max: 3 }),
    isShort: fc.boolean(),
  })
  .map(({ bars, remnants, pieces, kerf, ends, isShort }): CuttingProblem => ({
    name: '',
    scale: 1,
    kerf,
    worthKeeping: null,
    stock: [
      ...bars.map((length, index) => ({
        key: `bar ${String(index)}`,
        length,
        count: isShort ? 2 : null,
        isRemnant: false,
        price: length,
        ends,
      })),
      ...remnants.map((rest, index) => ({
        key: `rest ${String(index)}`,
        ...rest,
        isRemnant: true,
        price: 0,
        ends: 0,
      })),
    ],
    pieces: pieces.map((piece, index) => ({ key: `piece ${String(index)}`, ...piece, wantedFor: '' })),
  }));

test('no plan of a small list is better, and none is said to be', async () => {
  await fc.assert(
    fc.asyncProperty(smallProblem, async (problem) => {
      const best = bestOfAll(problem);
      const { plan, score, bounds, proved } = await solveCutting(problem, 5);
      if (best === null || plan === null || score === null) {
        expect(plan).toBe(best);
        return;
      }
      expect(cuttingFaults(problem, plan)).toEqual([]);
      expect(compareCutting(score, { ...score, ...best })).toBe(0);
      expect(bounds).toEqual(best);
      expect(proved).toEqual({ newLengths: true, taken: true });
    }),
    { ...runs(15), endOnFailure: true },
  );
});

const list = (capacity: number, ...pieces: readonly [length: number, count: number][]): CuttingProblem => ({
  name: '',
  scale: 1,
  kerf: 0,
  worthKeeping: null,
  stock: [{ key: 'roll', length: capacity, count: null, isRemnant: false, price: 0, ends: 0 }],
  pieces: pieces.map(([length, count]) => ({ key: String(length), length, count, wantedFor: '' })),
});

describe('textbook lists', () => {
  const known: readonly [source: string, problem: CuttingProblem, fewest: number][] = [
    // The bound of its linear program is 452.25.
    [
      'V. Chvátal, Linear Programming (1983), ch. 13',
      list(100, [45, 97], [36, 610], [31, 395], [14, 211]),
      453,
    ],
    // Bound 46.25.
    [
      'R. Fourer, D. Gay, B. Kernighan, AMPL, 2nd ed. (2003), sec. 14.4',
      list(110, [20, 48], [45, 35], [50, 24], [55, 10], [75, 8]),
      47,
    ],
  ];
  test.each(known)('%s', async (_, problem, fewest) => {
    const { score, bounds, proved } = await solveCutting(problem, 5);
    expect([score?.newLengths, bounds.newLengths, proved.newLengths]).toEqual([fewest, fewest, true]);
  });
});

test('a list whose bars are all filled to the end is found', async () => {
  // Invented: ten bars of 1000, each cut into three pieces without any waste.
  const cuts = Array.from({ length: 10 }, (_, bar) => [257 + 11 * bar, 301 + 7 * bar]);
  const lengths = cuts.flatMap(([first = 0, second = 0]) => [first, second, 1000 - first - second]);
  const pieces = [...new Set(lengths)].map((length): [number, number] => [
    length,
    lengths.filter((each) => each === length).length,
  ]);
  const { score, proved } = await solveCutting(list(1000, ...pieces), 5);
  expect([score?.newLengths, score?.waste, proved.newLengths]).toEqual([10, 0, true]);
});
