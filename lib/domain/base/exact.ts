/**
 * Exact numbers. A limit is compared, never rounded first: as floats, 0.1 + 0.2 lies above 0.3, and such an error
 * at the end of a window would refuse a joint that is right or pass one that is wrong.
 */

/** A ratio of whole numbers in lowest terms; `den` is above zero, and zero itself is 0/1. */
export interface Exact {
  readonly num: bigint;
  readonly den: bigint;
}

const greatestCommonDivisor = (a: bigint, b: bigint): bigint => {
  let [x, y] = [a < 0n ? -a : a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
};

/**
 * The number num/den, brought to lowest terms, so that equal numbers have equal parts.
 * Takes whole numbers only; a fraction in `number` or `den` 0 is a bug in the caller and throws a RangeError.
 *
 * @example exact(6, -4) // -3/2
 */
export const exact = (num: bigint | number, den: bigint | number = 1n): Exact => {
  const [top, bottom] = [BigInt(num), BigInt(den)];
  if (bottom === 1n) return { num: top, den: 1n };
  if (bottom === 0n) throw new RangeError('A ratio needs a denominator other than 0.');
  const positive = bottom < 0n ? -bottom : bottom;
  const divisor = greatestCommonDivisor(top, positive);
  return { num: (bottom < 0n ? -top : top) / divisor, den: positive / divisor };
};

export const ZERO: Exact = exact(0n);
export const ONE: Exact = exact(1n);

export const add = (a: Exact, b: Exact): Exact =>
  a.den === b.den ? exact(a.num + b.num, a.den) : exact(a.num * b.den + b.num * a.den, a.den * b.den);

export const subtract = (a: Exact, b: Exact): Exact => add(a, { num: -b.num, den: b.den });

export const multiply = (a: Exact, b: Exact): Exact => exact(a.num * b.num, a.den * b.den);

/** a/b, or null where b is zero. */
export const divide = (a: Exact, b: Exact): Exact | null =>
  b.num === 0n ? null : exact(a.num * b.den, a.den * b.num);

/** Compares a·b with a limit without working the product out: asked for every torqued joint of a suspect tool. */
export const compareProduct = (a: Exact, b: Exact, limit: Exact): -1 | 0 | 1 => {
  const product = a.num * b.num * limit.den;
  const bound = limit.num * a.den * b.den;
  return product < bound ? -1 : product > bound ? 1 : 0;
};

/** -1 where a lies below b, 0 where they are equal, 1 where it lies above. */
export const compare = (a: Exact, b: Exact): -1 | 0 | 1 => {
  // Most comparisons are of a reading and a limit with the same decimals: no product needed.
  const isSameScale = a.den === b.den;
  const left = isSameScale ? a.num : a.num * b.den;
  const right = isSameScale ? b.num : b.num * a.den;
  if (left === right) return 0;
  return left < right ? -1 : 1;
};

/** The value, and nothing where it lies below nothing: what is left can't be less. */
export const atLeastNone = (value: Exact): Exact => (value.num > 0n ? value : ZERO);

/** A value exactly on the limit counts as inside, here and in `isAtMost` (D18). */
export const isAtLeast = (value: Exact, limit: Exact): boolean => compare(value, limit) >= 0;
export const isAtMost = (value: Exact, limit: Exact): boolean => compare(value, limit) <= 0;

/** The nearest floating number: for advice and drawings, never for a limit. */
export const toNumber = (value: Exact): number => Number(value.num) / Number(value.den);

const DECIMAL = /^([+-]?)(\d+)(?:[.,](\d+))?$/;
/** `1,250` is one and a quarter to some people and a thousand more to others. */
const COULD_BE_THOUSANDS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/**
 * Reads `45`, `45.2`, `45,2`, `-0.5`; the true minus sign is accepted too.
 * Null for anything else: `1e-3`, `.5`, `5.`, `1,250.5`, and `1,250`, which could mean two things.
 *
 * @example parseDecimal('45,2') // 226/5
 */
export const parseDecimal = (text: string): Exact | null => {
  const plain = text.trim().replace(/^\u2212/, '-');
  const match = DECIMAL.exec(plain);
  if (match === null || COULD_BE_THOUSANDS.test(plain)) return null;
  const [, sign = '', whole = '', decimals = ''] = match;
  const size = BigInt(whole + decimals);
  return exact(sign === '-' ? -size : size, 10n ** BigInt(decimals.length));
};

const INCHES = /^(-?)(?:(\d+)(?:[ -](\d+)\/(\d+))?|(\d+)\/(\d+))\s*(?:"|\u2033|in)?$/;
const DECIMAL_INCHES = /^(-?\d+\.\d+)\s*(?:"|\u2033|in)?$/;

/**
 * Reads a length in inches as a shop writes it: `1-1/2`, `1 1/2"`, `3/8`, `2 in`, `0.75"`; a leading minus holds
 * for the whole of it. Null for anything else and for a zero below the line.
 *
 * @example parseInches('1-1/2') // 3/2
 */
export const parseInches = (text: string): Exact | null => {
  const plain = text.trim();
  const decimal = DECIMAL_INCHES.exec(plain)?.[1];
  if (decimal !== undefined) return parseDecimal(decimal);
  const match = INCHES.exec(plain);
  if (match === null) return null;
  const [, sign = '', whole = '0', mixedTop, mixedBottom, onlyTop, onlyBottom] = match;
  const den = BigInt(mixedBottom ?? onlyBottom ?? '1');
  if (den === 0n) return null;
  const size = BigInt(whole) * den + BigInt(mixedTop ?? onlyTop ?? '0');
  return exact(sign === '-' ? -size : size, den);
};

/**
 * The number as decimal text, for people: exact where it ends within `maxPlaces`, else rounded there, a tie away
 * from zero, with zeros at the end cut. What was rounded must not be read back into a rule.
 *
 * @example toDecimalText(exact(2, 3), 3) // '0.667'
 */
export const toDecimalText = (value: Exact, maxPlaces = 6): string => {
  const scale = 10n ** BigInt(maxPlaces);
  const size = value.num < 0n ? -value.num : value.num;
  // Adding half before the whole division rounds the tie up; working on the size makes -x read as x does.
  const rounded = (2n * size * scale + value.den) / (2n * value.den);
  const decimals = (rounded % scale).toString().padStart(maxPlaces, '0').replace(/0+$/, '');
  const sign = value.num < 0n && rounded !== 0n ? '-' : '';
  return `${sign}${rounded / scale}${maxPlaces === 0 || decimals === '' ? '' : `.${decimals}`}`;
};

/**
 * A length in inches as a fraction, without the unit: `1-1/2`, `3/8`, `2`. Exact; `parseInches` reads it back.
 *
 * @example toInchText(exact(3, 2)) // '1-1/2'
 */
export const toInchText = ({ num, den }: Exact): string => {
  const size = num < 0n ? -num : num;
  const [whole, rest] = [size / den, size % den];
  const sign = num < 0n ? '-' : '';
  if (rest === 0n) return `${sign}${whole}`;
  return whole === 0n ? `${sign}${rest}/${den}` : `${sign}${whole}-${rest}/${den}`;
};
