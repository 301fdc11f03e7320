import { describe, expect, test } from 'vitest';
import { parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { parseLimit, parseSpecification, parseWindow, placeOf, windowText } from '@/lib/domain/plan/window';

const shown = (value: Exact | null): string | null => (value === null ? null : toDecimalText(value));

describe('a window', () => {
  test.each([
    ['45 ± 3 N·m', '42', '48', '45', 'N·m'],
    ['45 +/- 3 Nm', '42', '48', '45', 'N·m'],
    ['45 +- 0.5 N·m', '44.5', '45.5', '45', 'N·m'],
    ['45 ± 5 % N·m', '42.75', '47.25', '45', 'N·m'],
    ['0.1 ± 0.2 mm', '-0.1', '0.3', '0.1', 'mm'],
    ['-2 ± 0.5 °', '-2.5', '-1.5', '-2', '°'],
    ['-2 ± 10 % °', '-2.2', '-1.8', '-2', '°'],
    ['45 ± 0 N·m', '45', '45', '45', 'N·m'],
    ['190 to 230 lbf·ft', '190', '230', null, 'lbf·ft'],
    ['-1.5 to -0.5 °', '-1.5', '-0.5', null, '°'],
    ['3 to 3 mm', '3', '3', null, 'mm'],
    ['>= 25 mm', '25', null, null, 'mm'],
    ['<= 0.1 mm', null, '0.1', null, 'mm'],
    ['<=-2 mm', null, '-2', null, 'mm'],
  ])('%s', (text, low, high, target, unit) => {
    const window = parseWindow(text);
    expect(window && [shown(window.low), shown(window.high), shown(window.target), window.unit]).toEqual([
      low,
      high,
      target,
      unit,
    ]);
  });

  test.each([
    '',
    '45',
    '45 N·m',
    '45 ± 3',
    '45 ± -3 N·m',
    '45 ± 3 furlong',
    '45 ± 3 lb ft',
    '230 to 190 lbf·ft',
    '190 - 230 lbf·ft',
    '> 25 mm',
    '>= mm',
    '<= 0,1 mm',
    'about 45 ± 3 N·m',
  ])('is not “%s”', (text) => {
    expect(parseWindow(text)).toBeNull();
  });
});

describe('where a value lies', () => {
  test.each([
    ['45 ± 5 % N·m', '42.749', 'below'],
    ['45 ± 5 % N·m', '42.75', 'inside'],
    ['45 ± 5 % N·m', '47.25', 'inside'],
    ['45 ± 5 % N·m', '47.2500001', 'above'],
    ['-2 ± 0.5 °', '-2.5', 'inside'],
    ['-2 ± 0.5 °', '-2.51', 'below'],
    ['>= 25 mm', '24.999', 'below'],
    ['>= 25 mm', '25', 'inside'],
    ['>= 25 mm', '1000', 'inside'],
    ['<= 0.1 mm', '0.1', 'inside'],
    ['<= 0.1 mm', '0.1001', 'above'],
    ['<= 0.1 mm', '-5', 'inside'],
  ])('%s, %s: %s', (text, typed, wanted) => {
    const window = parseWindow(text);
    const value = parseDecimal(typed);
    expect(window && value && placeOf(window, value)).toBe(wanted);
  });
});

test.each([
  ['45 ± 3 N·m', '42 to 48 N·m'],
  ['>= 25 mm', 'at least 25 mm'],
  ['<= 0.1 mm', 'at most 0.1 mm'],
])('%s reads %s', (text, wanted) => {
  const window = parseWindow(text);
  expect(window && windowText(window)).toBe(wanted);
});

test.each([
  ['45 ± 3 N·m', 'window'],
  [' no value yet ', 'no-value-yet'],
  ['no value published', 'no-value-published'],
  ['no value', undefined],
  ['tight', undefined],
])('a specification “%s” is %s', (text, kind) => {
  expect(parseSpecification(text)?.kind).toBe(kind);
});

test.each([
  ['>= 25 mm', 'window'],
  ['boot whole', 'statement'],
  ['none cracked', 'statement'],
  ['>= 25 furlong', undefined],
  ['3 mm', undefined],
  ['± 3 mm', undefined],
  ['  ', undefined],
])('a limit “%s” is %s', (text, kind) => {
  expect(parseLimit(text)?.kind).toBe(kind);
});
