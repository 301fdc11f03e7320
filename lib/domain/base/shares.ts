/** Money shared out in whole units, so that what is shown line by line adds up to what is shown as the sum. */
import { ZERO, add, compare, divide, exact, multiply, subtract } from './exact';
import type { Exact } from './exact';

/** Rounded to a whole number, a half away from zero. */
export const nearestWhole = ({ num, den }: Exact): number => {
  const size = num < 0n ? -num : num;
  const rounded = (2n * size + den) / (2n * den);
  return Number(num < 0n ? -rounded : rounded);
};

const floorOf = ({ num, den }: Exact): bigint => num / den - (num < 0n && num % den !== 0n ? 1n : 0n);

export const sumOf = (parts: readonly Exact[]): Exact => parts.reduce(add, ZERO);

/**
 * Whole numbers for these parts that add up to `total`: each is rounded down, and what is left goes, one unit each, to those
 * that lost most, the first of equals first. This is the method of largest remainders (Hamilton's, of 1792; as in Balinski and
 * Young, Fair Representation, 1982, from memory). `total` is the parts' own sum, rounded: each is less than one unit off.
 *
 * @example inWholes(100, [exact(100, 3), exact(100, 3), exact(100, 3)]) // [34, 33, 33]
 */
export const inWholes = (total: number, parts: readonly Exact[]): readonly number[] => {
  const down = parts.map(floorOf);
  const left = total - Number(down.reduce((sum, each) => sum + each, 0n));
  const lost = parts.map((part, index) => ({ index, rest: subtract(part, exact(down[index] ?? 0n)) }));
  const first = [...lost].sort((a, b) => compare(b.rest, a.rest) || a.index - b.index);
  const more = new Set(first.slice(0, Math.max(0, left)).map(({ index }) => index));
  return down.map((each, index) => Number(each) + (more.has(index) ? 1 : 0));
};

/**
 * An amount shared out by value, exactly; evenly where no values are known. One without a value among others that have one
 * gets nothing: common practice for freight in cost accounting, no source.
 */
export const byValue = (amount: Exact, values: readonly (Exact | null)[]): readonly Exact[] => {
  const whole = sumOf(values.map((value) => value ?? ZERO));
  const even = divide(amount, exact(values.length)) ?? ZERO;
  return values.map((value) => {
    const share = divide(value ?? ZERO, whole);
    return share === null ? even : multiply(amount, share);
  });
};
