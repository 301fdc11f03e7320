/** Whether a cut plan can be sawn. All lengths here are invented, but for the textbook’s. */
import { describe, expect, test } from 'vitest';
import { parseDecimal, parseInches } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import {
  compareCutting,
  cuttingFaults,
  cuttingScore,
  fewestByMaterial,
  tooLong,
  wholeUnits,
} from '@/lib/domain/shop/cutting';
import type { CutBar, CuttingProblem } from '@/lib/domain/shop/cutting';

const problem: CuttingProblem = {
  name: 'T60',
  scale: 1,
  kerf: 3,
  worthKeeping: 300,
  stock: [
    { key: 'bar', length: 6000, count: null, isRemnant: false, price: 2690, ends: 10 },
    { key: 'rest', length: 2000, count: 1, isRemnant: true, price: 0, ends: 0 },
  ],
  pieces: [
    { key: 'sill', length: 2992, count: 2, wantedFor: 'Corbel 3' },
    { key: 'brace', length: 990, count: 2, wantedFor: 'Corbel 5' },
  ],
};
const bar = (stock: string, times: number, ...pieces: readonly [string, number][]): CutBar => ({
  stock,
  times,
  pieces: pieces.map(([piece, count]) => ({ piece, count })),
});
const sound = [bar('bar', 1, ['sill', 2]), bar('rest', 1, ['brace', 2])];
const codes = (...plan: readonly CutBar[]) => cuttingFaults(problem, plan).map(({ code }) => code);

describe('a cut plan', () => {
  test('is sound where ends and one cut between two pieces leave exactly enough', () => {
    // 10 for the ends, 2 × 2992, one cut of 3: 5997; the second cut takes the last 3 mm.
    expect(cuttingFaults(problem, sound)).toEqual([]);
    const longer = { ...problem, kerf: 7 };
    // 10 + 5984 + 7 is 6001; the rule leaves out only the last cut.
    expect(cuttingFaults(longer, sound)).toContainEqual({ code: 'too-much-on-a-bar', stock: 'bar', over: 8 });
  });

  test('is told all that is wrong with it', () => {
    expect(codes(bar('bar', 1, ['sill', 1]), sound[1] ?? bar('', 1))).toEqual(['wrong-number']);
    expect(codes(...sound, bar('bar', 1, ['brace', 1]))).toEqual(['wrong-number']);
    expect(codes(bar('bar', 1, ['sill', 2]), bar('rest', 2, ['brace', 1]))).toEqual(['more-than-there-are']);
    expect(codes(...sound, bar('plank', 1))).toEqual(['unknown-stock']);
    expect(codes(...sound, bar('bar', 1, ['strut', 1]))).toEqual(['unknown-piece']);
    expect(codes(...sound, bar('bar', 1.5))).toEqual(['not-a-count']);
    expect(codes(bar('bar', 2, ['sill', 1]), bar('rest', 1, ['brace', 2]))).toEqual([]);
  });

  test('counts new lengths, what is taken, money, waste and rests worth keeping', () => {
    expect(cuttingScore(problem, sound)).toEqual({
      newLengths: 1,
      taken: 8000,
      price: 2690,
      waste: 36,
      kept: [],
    });
    const wide = cuttingScore(problem, [bar('bar', 2, ['sill', 1]), bar('bar', 1, ['brace', 2])]);
    expect(wide).toMatchObject({ newLengths: 3, taken: 18_000, price: 8070, kept: [4004, 2995, 2995] });
    expect(compareCutting(cuttingScore(problem, sound), wide)).toBeLessThan(0);
  });

  test('is refused before it is asked for where a piece fits nowhere', () => {
    const pieces = [{ key: 'rail', length: 5991, count: 1, wantedFor: '' }];
    expect(tooLong({ ...problem, pieces }).map(({ key }) => key)).toEqual(['rail']);
    expect(tooLong({ ...problem, pieces: [{ key: 'rail', length: 5990, count: 1, wantedFor: '' }] })).toEqual(
      [],
    );
  });

  test('needs no fewer lengths than its material, remnants taken off', () => {
    // Pieces with cuts 2 × 2995 + 2 × 993 = 7976; the remnant holds 2003, a bar 5993.
    expect(fewestByMaterial(problem)).toBe(1);
    expect(
      fewestByMaterial({ ...problem, pieces: [{ key: 'sill', length: 2992, count: 3, wantedFor: '' }] }),
    ).toBe(2);
  });
});

describe('a unit for all lengths', () => {
  const units = (read: (text: string) => Exact | null, ...texts: readonly string[]) =>
    wholeUnits(texts.flatMap((text) => read(text) ?? []));

  test('is fine enough for each of them, and no finer', () => {
    expect(units(parseDecimal, '3', '1240.5', '0.25')).toEqual({ scale: 4, whole: [12, 4962, 1] });
    expect(units(parseInches, '12-3/8', '1/3')).toEqual({ scale: 24, whole: [297, 8] });
  });

  test('is not there where numbers would grow too large', () => {
    expect(units(parseDecimal, '0.000000001', '1')).toBeNull();
  });
});
