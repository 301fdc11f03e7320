import { describe, expect, test } from 'vitest';
import { addDays, addMonths, shopDayAfter } from '@/lib/domain/base/days';
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import { catalogueOf, itemFrom, parseQuantity, roundedUp } from '@/lib/domain/shop/item';
import { lastGoodDay, lotState, parseBin } from '@/lib/domain/shop/lot-state';
import { sizeText } from '@/lib/domain/shop/size';

describe('days', () => {
  test.each([
    ['2026-02-27', 2, '2026-03-01'],
    ['2024-02-28', 1, '2024-02-29'],
    ['2026-01-01', -1, '2025-12-31'],
  ])('%s and %i', (day, count, then) => {
    expect(addDays(day, count)).toBe(then);
  });

  test.each([
    ['2026-01-31', 1, '2026-02-28'],
    ['2026-11-25', 24, '2028-11-25'],
    ['2026-11-30', 3, '2027-02-28'],
  ])('%s and %i months', (day, count, then) => {
    expect(addMonths(day, count)).toBe(then);
  });

  // 25 November 2026 is a Wednesday.
  test.each([
    ['2026-11-25', 0, '2026-11-25'],
    ['2026-11-25', 2, '2026-11-27'],
    ['2026-11-25', 3, '2026-12-01'],
    ['2026-11-28', 0, '2026-12-01'],
  ])('%s and %i shop days, shut on Saturday, Sunday and the 30th', (from, count, then) => {
    expect(shopDayAfter(from, count, { shut: [6, 7], closed: ['2026-11-30'] })).toBe(then);
  });
});

describe('a lot', () => {
  const lot = { expires: '2026-12-31', quarantined: null };
  // Brake fluid in the demo shop: opened, it keeps 7 days.
  const shelf = { months: 24, openedDays: 7 };

  test('is good up to and with its last day', () => {
    expect(lotState(lot, null, '2026-12-31')).toEqual({ state: 'good' });
    expect(lotState(lot, null, '2027-01-01')).toEqual({ state: 'expired', last: '2026-12-31' });
    expect(lotState({ ...lot, expires: null }, null, '2099-01-01')).toEqual({ state: 'good' });
  });

  test('keeps less long once it is opened', () => {
    expect(lastGoodDay({ ...lot, openedOn: '2026-11-25' }, shelf)).toBe('2026-12-02');
    expect(lastGoodDay({ ...lot, openedOn: '2026-12-30' }, shelf)).toBe('2026-12-31');
    expect(lastGoodDay({ ...lot, expires: null, openedOn: '2026-11-25' }, shelf)).toBe('2026-12-02');
    expect(lastGoodDay({ ...lot, openedOn: '2026-11-25' }, null)).toBe('2026-12-31');
    expect(lotState({ ...lot, openedOn: '2026-11-25' }, shelf, '2026-12-03').state).toBe('expired');
  });

  test('that is kept apart is so, expired or not', () => {
    expect(lotState({ ...lot, quarantined: 'soft' }, null, '2027-06-01')).toEqual({
      state: 'quarantined',
      reason: 'soft',
    });
  });
});

test.each([
  ['09C', '09C'],
  ['9c', '09C'],
  [' 12 b ', '12B'],
  ['3-a', '03A'],
  ['C09', null],
  ['00A', null],
  ['123A', null],
  ['09', null],
])('bin %s is %s', (text, bin) => {
  expect(parseBin(text)).toBe(bin);
});

describe('an item', () => {
  test('is read from its name', () => {
    const item = itemFrom('M10x40', {
      name: 'bolt M10×1.5×40 8.8 zinc',
      unit: 'pc',
      reuse: '3 times',
      trace: 'lot',
    });
    expect(item.size === null ? null : sizeText(item.size)).toBe('bolt M10×1.5×40 8.8 zinc');
    expect(item).toMatchObject({
      reuse: { rule: 'times', times: 3 },
      trace: 'lot',
      unit: 'pc',
      comesWith: {},
    });
    expect(itemFrom('GK-head', { name: 'head gasket' }).size).toBeNull();
  });

  test('has the shop’s own terms; of two plans the first one’s words stand', () => {
    const one = { plan: 'a', revision: '1', stages: {}, items: { W: { name: 'washer M8' } } };
    const two = {
      plan: 'b',
      revision: '1',
      stages: {},
      items: { W: { name: 'washer M10' }, X: { name: 'X' } },
    };
    const found = catalogueOf([one, two], { W: { minimum: exact(100) } });
    expect(found['W']).toMatchObject({ name: 'washer M8', minimum: exact(100) });
    expect(Object.keys(found)).toEqual(['W', 'X']);
  });
});

test.each([
  ['6.41 m', '6.41'],
  ['13.30 m', '13.3'],
  [14, '14'],
  [0.5, '0.5'],
  ['a bit', '–'],
])('%s is %s', (text, value) => {
  const read = parseQuantity(text);
  expect(read === null ? '–' : toDecimalText(read)).toBe(value);
});

test('whole pieces of what is counted', () => {
  expect(roundedUp(exact(5, 2), 'pc')).toEqual(exact(3));
  expect(roundedUp(exact(5, 2), 'm')).toEqual(exact(5, 2));
  expect(roundedUp(exact(3), 'pc')).toEqual(exact(3));
  expect(roundedUp(exact(1, 2), '5 l')).toEqual(exact(1));
});
