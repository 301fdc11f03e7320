import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  ONE,
  ZERO,
  add,
  compare,
  divide,
  exact,
  isAtLeast,
  isAtMost,
  multiply,
  parseDecimal,
  parseInches,
  subtract,
  toDecimalText,
  toInchText,
  toNumber,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';

// fraction.js is the oracle: it knows nothing of this code and passed the same cases when it was tried.

const wholes = fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n });
const belows = fc.bigInt({ min: 1n, max: 10n ** 15n });
const exacts = fc.tuple(wholes, belows).map(([num, den]) => exact(num, den));
const smalls = fc
  .tuple(fc.bigInt({ min: -50n, max: 50n }), fc.bigInt({ min: 1n, max: 12n }))
  .map(([num, den]) => exact(num, den));
/** Small ones meet each other and zero often, large ones never do: both are needed. */
const anyExact = fc.oneof(exacts, smalls);

const asFraction = ({ num, den }: Exact) => new Fraction(num, den);
const fromFraction = (fraction: Fraction): Exact => ({ num: fraction.s * fraction.n, den: fraction.d });

describe('exact', () => {
  test.each<[name: string, made: Exact, num: bigint, den: bigint]>([
    ['lowest terms', exact(6, 4), 3n, 2n],
    ['sign goes to the top', exact(6, -4), -3n, 2n],
    ['both negative', exact(-6n, -4n), 3n, 2n],
    ['zero is 0/1', exact(0, -7), 0n, 1n],
    ['whole', exact(7), 7n, 1n],
    ['constants', add(ZERO, ONE), 1n, 1n],
  ])('%s', (_, made, num, den) => {
    expect(made).toEqual({ num, den });
  });

  test('a denominator of 0 and a broken whole are bugs, and say so', () => {
    expect(() => exact(1, 0)).toThrow(RangeError);
    expect(() => exact(1.5)).toThrow(RangeError);
  });
});

describe('arithmetic against fraction.js', () => {
  test('add, subtract, multiply, divide agree and stay in lowest terms', () => {
    fc.assert(
      fc.property(anyExact, anyExact, (a, b) => {
        const [left, right] = [asFraction(a), asFraction(b)];
        expect(add(a, b)).toEqual(fromFraction(left.add(right)));
        expect(subtract(a, b)).toEqual(fromFraction(left.sub(right)));
        expect(multiply(a, b)).toEqual(fromFraction(left.mul(right)));
        expect(divide(a, b)).toEqual(b.num === 0n ? null : fromFraction(left.div(right)));
      }),
      { numRuns: 300 },
    );
  });

  test('compare agrees, and both limits are inside', () => {
    fc.assert(
      fc.property(anyExact, anyExact, (a, b) => {
        const order = asFraction(a).compare(asFraction(b));
        expect(compare(a, b)).toBe(Math.sign(order));
        expect(isAtLeast(a, b)).toBe(order >= 0);
        expect(isAtMost(a, b)).toBe(order <= 0);
      }),
      { numRuns: 300 },
    );
    expect(isAtLeast(exact(1, 3), exact(2, 6)) && isAtMost(exact(1, 3), exact(2, 6))).toBe(true);
  });

  test('0.1 + 0.2 is 0.3, where floats lie above', () => {
    const [a, b, c] = [exact(1, 10), exact(2, 10), exact(3, 10)];
    expect(0.1 + 0.2 > 0.3).toBe(true);
    expect(compare(add(a, b), c)).toBe(0);
  });

  test('toNumber is the nearest that floats have', () => {
    fc.assert(
      fc.property(smalls, (a) => {
        expect(toNumber(a)).toBe(asFraction(a).valueOf());
      }),
    );
  });
});

describe('decimal text', () => {
  test.each<[text: string, num: number, den: number]>([
    ['45', 45, 1],
    ['45.2', 226, 5],
    ['45,2', 226, 5],
    ['-0.5', -1, 2],
    ['\u22120.5', -1, 2],
    ['+0.75', 3, 4],
    [' 007 ', 7, 1],
    ['0,125', 1, 8],
    ['1.250', 5, 4],
    ['-0', 0, 1],
    ['4.4482216152605', 8896443230521, 2000000000000],
  ])('reads %j', (text, num, den) => {
    expect(parseDecimal(text)).toEqual(exact(num, den));
  });

  test.each(['', ' ', '1e-3', '.5', '5.', '1,250', '-12,125', '1,250.5', '1 250', '--1', '0x10', 'NaN', '٣'])(
    'refuses %j',
    (text) => {
      expect(parseDecimal(text)).toBeNull();
    },
  );

  test('reads what fraction.js reads', () => {
    const texts = fc
      .tuple(fc.boolean(), fc.nat(), fc.stringMatching(/^\d{0,12}$/))
      .map(
        ([isNegative, whole, decimals]) =>
          `${isNegative ? '-' : ''}${whole}${decimals === '' ? '' : '.'}${decimals}`,
      );
    fc.assert(
      fc.property(texts, (text) => {
        expect(parseDecimal(text)).toEqual(fromFraction(new Fraction(text)));
      }),
    );
  });

  test.each<[value: Exact, places: number, text: string]>([
    [exact(45), 6, '45'],
    [exact(-1, 2), 6, '-0.5'],
    [exact(1, 8), 6, '0.125'],
    [exact(100), 0, '100'],
    [exact(2, 3), 3, '0.667'],
    [exact(1, 3), 6, '0.333333'],
    [exact(1, 2), 0, '1'],
    [exact(-1, 2), 0, '-1'],
    [exact(5, 10_000_000), 6, '0.000001'],
    [exact(-4, 10_000_000), 6, '0'],
    [exact(9_999_999, 10_000_000), 6, '1'],
    [exact(1_000_001, 10), 1, '100000.1'],
  ])('writes %o to %i places', (value, places, text) => {
    expect(toDecimalText(value, places)).toBe(text);
  });

  test('what ends within the places comes back unchanged', () => {
    const ending = fc
      .tuple(wholes, fc.integer({ min: 0, max: 6 }))
      .map(([num, places]) => exact(num, 10n ** BigInt(places)));
    fc.assert(
      fc.property(ending, (value) => {
        expect(parseDecimal(toDecimalText(value))).toEqual(value);
      }),
    );
  });

  test('rounding is off by half a last place at most', () => {
    fc.assert(
      fc.property(anyExact, fc.integer({ min: 0, max: 8 }), (value, places) => {
        const read = new Fraction(toDecimalText(value, places));
        const error = read.sub(asFraction(value)).abs();
        expect(error.compare(new Fraction(1n, 2n * 10n ** BigInt(places)))).toBeLessThanOrEqual(0);
      }),
    );
  });
});

describe('inches', () => {
  test.each<[text: string, num: number, den: number]>([
    ['1-1/2', 3, 2],
    ['3/8', 3, 8],
    ['1 1/2"', 3, 2],
    ['2 in', 2, 1],
    ['2', 2, 1],
    ['6/16"', 3, 8],
    ['-1-1/2', -3, 2],
    ['0.75 in', 3, 4],
    ['1.5\u2033', 3, 2],
  ])('reads %j', (text, num, den) => {
    expect(parseInches(text)).toEqual(exact(num, den));
  });

  test.each(['', '1/0', '1-1/0', '1--1/2', '1/2/3', '/2', '3/', '1 1', 'in', '2 mm', '1-', '1e3'])(
    'refuses %j',
    (text) => {
      expect(parseInches(text)).toBeNull();
    },
  );

  test.each<[num: number, den: number, text: string]>([
    [3, 2, '1-1/2'],
    [3, 8, '3/8'],
    [2, 1, '2'],
    [0, 1, '0'],
    [-3, 2, '-1-1/2'],
    [-1, 64, '-1/64'],
  ])('%i/%i is written %s', (num, den, text) => {
    expect(toInchText(exact(num, den))).toBe(text);
  });

  test('what is written is read back', () => {
    fc.assert(
      fc.property(anyExact, (value) => {
        expect(parseInches(toInchText(value))).toEqual(value);
      }),
    );
  });

  test('a fraction of an inch is written as fraction.js writes it, but for the dash', () => {
    fc.assert(
      fc.property(anyExact, (value) => {
        expect(toInchText(value)).toBe(asFraction(value).toFraction(true).replace(' ', '-'));
      }),
    );
  });
});
