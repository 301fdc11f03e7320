import fc from 'fast-check';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { compare, exact, parseDecimal, toDecimalText, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { UNITS, convert, dimensionOf, parseUnit } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';

/** Decimals that end, by definition. Source: the three exact definitions, see lib/domain/base/units.ts. */
const exactFactors: readonly [from: Unit, to: Unit, factor: string][] = [
  ['in', 'mm', '25.4'],
  // https://smart-calculators.net/bn-BD/tools/force-converter
  ['lbf', 'N', '4.4482216152605'],
  ['lbf·ft', 'N·m', '1.3558179483314004'], // [derived] exactly, from lbf and 12 × 25.4 mm
  ['lbf·in', 'N·m', '0.1129848290276167'], // [derived]
  ['kgf·m', 'N·m', '9.80665'],
  ['kgf·cm', 'N·m', '0.0980665'],
  ['kgf', 'N', '9.80665'],
  ['cN·m', 'N·m', '0.01'],
  ['lbf·ft', 'lbf·in', '12'],
  ['lb', 'kg', '0.45359237'],
  ['m', 'mm', '1000'],
  ['cm', 'mm', '10'],
  ['mm', '\u00b5m', '1000'],
  ['bar', 'kPa', '100'],
  ['MPa', 'bar', '10'],
  ['d', 'h', '24'],
  ['h', 'min', '60'],
  ['min', 's', '60'],
  ['l', 'ml', '1000'],
  ['k\u03a9', '\u03a9', '1000'],
];

/** Decimals that never end, rounded; worked out outside this code, in Python's fractions. [derived] */
const repeatingFactors: readonly [from: Unit, to: Unit, places: number, factor: string][] = [
  ['psi', 'kPa', 17, '6.89475729316836134'],
  ['N·m', 'lbf·ft', 20, '0.73756214927726536388'],
  ['N·m', 'lbf·in', 20, '8.85074579132718436654'],
  ['N·m', 'kgf·m', 20, '0.10197162129779282426'],
  ['kgf·m', 'lbf·ft', 20, '7.23301385120989438067'],
  ['MPa', 'psi', 20, '145.03773773020921515424'],
];

/** The unit's name in mathjs 15.2.0, an independent table. Its psi is 1e-11 off, hence the 1e-9 below. */
const mathNames: readonly (readonly [Unit, string])[][] = [
  [
    ['N·m', 'N m'],
    ['cN·m', 'cN m'],
    ['lbf·ft', 'lbf ft'],
    ['lbf·in', 'lbf in'],
    ['kgf·m', 'kgf m'],
    ['kgf·cm', 'kgf cm'],
  ],
  [
    ['mm', 'mm'],
    ['m', 'm'],
    ['cm', 'cm'],
    ['in', 'in'],
    ['\u00b5m', 'um'],
  ],
  [
    ['kPa', 'kPa'],
    ['bar', 'bar'],
    ['MPa', 'MPa'],
    ['psi', 'psi'],
  ],
  [
    ['N', 'N'],
    ['lbf', 'lbf'],
    ['kgf', 'kgf'],
  ],
  [
    ['s', 's'],
    ['min', 'minute'],
    ['h', 'hour'],
    ['d', 'day'],
  ],
  [
    ['kg', 'kg'],
    ['lb', 'lbm'],
  ],
  [
    ['ml', 'ml'],
    ['l', 'l'],
  ],
  [
    ['\u03a9', 'ohm'],
    ['k\u03a9', 'kohm'],
  ],
];

/** US Army TM 10-6640-238-13 table G-1: each N·m figure is the printed lbf·ft, converted and rounded by them.
 * https://semitruckmanuals.tpub.com/TM-10-6640-238-13/css/TM-10-6640-238-13_480.htm */
const armyPairs: readonly [poundFeet: number, newtonMetres: number][] = [
  [8, 11],
  [10, 14],
  [17, 23],
  [19, 26],
  [31, 42],
  [35, 47],
  [49, 66],
  [75, 102],
  [85, 115],
  [110, 149],
  [170, 231],
  [270, 366],
  [295, 400],
  [12, 16],
  [14, 19],
  [24, 33],
  [27, 37],
  [44, 60],
  [70, 95],
  [105, 142],
  [120, 163],
  [155, 210],
  [240, 325],
  [375, 508],
  [420, 569],
];

const units = fc.constantFrom(...UNITS);
const values = fc
  .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 1, max: 1000 }))
  .map(([num, den]) => exact(num, den));

const one = exact(1);
const mustConvert = (value: Exact, from: Unit, to: Unit): Exact => {
  const converted = convert(value, from, to);
  if (converted === null) throw new Error(`No way from ${from} to ${to}`);
  return converted;
};

describe('convert', () => {
  test.each(exactFactors)('1 %s in %s is exactly %s', (from, to, factor) => {
    expect(convert(one, from, to)).toEqual(parseDecimal(factor));
  });

  test.each(repeatingFactors)('1 %s in %s, to %i places', (from, to, places, factor) => {
    expect(toDecimalText(mustConvert(one, from, to), places)).toBe(factor);
  });

  const mathPairs = mathNames.flatMap((group) =>
    group.flatMap((from) => group.filter((to) => to !== from).map((to) => [...from, ...to] as const)),
  );
  test.each(mathPairs)('%s (%s) to %s (%s) agrees with mathjs', (from, fromName, to, toName) => {
    const ours = toNumber(mustConvert(exact(25), from, to));
    const theirs = mathUnit(25, fromName).toNumber(toName);
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(1e-9);
  });

  test.each(armyPairs)('%i lbf·ft is printed as %i N·m', (poundFeet, newtonMetres) => {
    const ours = toNumber(mustConvert(exact(poundFeet), 'lbf·ft', 'N·m'));
    expect(Math.abs(ours - newtonMetres)).toBeLessThanOrEqual(0.65);
  });

  test('there and back is the same number; between dimensions there is no way', () => {
    fc.assert(
      fc.property(values, units, units, (value, from, to) => {
        const there = convert(value, from, to);
        expect(there === null).toBe(dimensionOf(from) !== dimensionOf(to));
        if (there !== null) expect(convert(there, to, from)).toEqual(value);
      }),
      { numRuns: 500 },
    );
  });

  test('keeps the order of two values', () => {
    fc.assert(
      fc.property(values, values, (a, b) => {
        const [left, right] = [a, b].map((each) => mustConvert(each, 'lbf·in', 'kgf·cm'));
        expect(compare(left ?? one, right ?? one)).toBe(compare(a, b));
      }),
    );
  });

  test('torque is not force, and a turn is not an angle', () => {
    expect(convert(one, 'N·m', 'N')).toBeNull();
    expect(convert(one, 'turn', '°')).toBeNull();
    expect(dimensionOf('kgf·cm')).toBe('torque');
  });
});

describe('parseUnit', () => {
  test.each(UNITS)('reads its own spelling %s', (each) => {
    expect(parseUnit(` ${each} `)).toBe(each);
  });

  test.each<[text: string, expected: Unit]>([
    ['Nm', 'N·m'],
    ['N.m', 'N·m'],
    ['N m', 'N·m'],
    ['N-m', 'N·m'],
    ['N*m', 'N·m'],
    ['N\u22c5m', 'N·m'],
    ['cNm', 'cN·m'],
    ['lbf ft', 'lbf·ft'],
    ['lbf.ft', 'lbf·ft'],
    ['lbf-ft', 'lbf·ft'],
    ['ft-lbf', 'lbf·ft'],
    ['ft lbf', 'lbf·ft'],
    ['lbf in', 'lbf·in'],
    ['in-lbf', 'lbf·in'],
    ['kgf m', 'kgf·m'],
    ['kgf.cm', 'kgf·cm'],
    ['deg', '°'],
    ['\u00ba', '°'],
    ['um', '\u00b5m'],
    ['\u03bcm', '\u00b5m'],
    ['"', 'in'],
    ['in.', 'in'],
    ['kohm', 'k\u03a9'],
    ['k\u2126', 'k\u03a9'],
    ['L', 'l'],
    ['turns', 'turn'],
    ['clicks', 'click'],
  ])('reads %j as %s', (text, expected) => {
    expect(parseUnit(text)).toBe(expected);
  });

  // Pounds, or kilograms, of what? A mass times a length is no torque. mN is a thousandth of a newton.
  test.each([
    'lb ft',
    'lb-ft',
    'ft-lb',
    'ft lb',
    'in-lb',
    'lb in',
    'ft.lbs',
    'kg m',
    'kgm',
    'mN',
    'NM',
    'nm',
  ])('refuses the ambiguous %j', (text) => {
    expect(parseUnit(text)).toBeNull();
  });

  test.each(['', ' ', '·', 'J', '°C', 'furlong', 'constructor', '__proto__', 'N··m', 'N m m'])(
    'refuses %j',
    (text) => {
      expect(parseUnit(text)).toBeNull();
    },
  );
});
