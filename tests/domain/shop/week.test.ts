/** The week's order as a problem. All invented; the day is Wednesday, 25 November 2026. */
import { describe, expect, test } from 'vitest';
import { ZERO, exact } from '@/lib/domain/base/exact';
import type { OfferRow } from '@/lib/domain/shop/offer-rows';
import { arrivalOf } from '@/lib/domain/shop/order';
import { dayFrom, dayNumber, weekOf } from '@/lib/domain/shop/week';
import { ask, demandFor, offer, supplier, wanted } from '@/tests/support/week';

describe('when goods come', () => {
  test.each([
    ['the day after tomorrow', '2026-11-25', 2, '2026-11-27'],
    ['not on a day on which the shop is shut', '2026-11-25', 4, '2026-12-01'],
    ['on Monday what is brought the same day on a Saturday', '2026-11-28', 0, '2026-11-30'],
  ])('%s', (_, from, lead, comes) => {
    expect(dayFrom(arrivalOf(dayNumber(from), lead, [6, 7]))).toBe(comes);
  });
});

describe('what can’t wait for the next order', () => {
  /** H comes on 4 December from the order of the 2nd, B, four days off, on the 8th; a day in hand. */
  const both = [supplier('H', 2), supplier('B', 4)];
  test.each<[string, string, readonly OfferRow[], boolean]>([
    ['needed before H could bring it again', '2026-12-04', [offer('H', 'NUT', '50', 1)], true],
    ['needed when H has brought it again', '2026-12-05', [offer('H', 'NUT', '50', 1)], false],
    [
      'while one of two could not any more',
      '2026-12-08',
      [offer('H', 'NUT', '50', 1), offer('B', 'NUT', '10', 1)],
      true,
    ],
    ['both can', '2026-12-09', [offer('H', 'NUT', '50', 1), offer('B', 'NUT', '10', 1)], false],
    ['late already', '2026-11-20', [offer('H', 'NUT', '50', 1)], true],
  ])('%s', (_, by, offers, isNow) => {
    const week = weekOf(ask([demandFor('NUT', [wanted('C1', by, exact(4))])], offers, { suppliers: both }));
    expect([week.groups.length, week.later.length]).toEqual(isNow ? [1, 0] : [0, 1]);
  });

  test.each<[string, string, readonly OfferRow[], string | null]>([
    [
      'the last Wednesday from which it comes in time',
      '2026-12-12',
      [offer('H', 'NUT', '50', 1)],
      '2026-12-09',
    ],
    [
      'the later of two',
      '2026-12-12',
      [offer('H', 'NUT', '50', 1), offer('B', 'NUT', '10', 1)],
      '2026-12-09',
    ],
    ['only from the slower', '2026-12-12', [offer('B', 'NUT', '10', 1)], '2026-12-02'],
    ['today, and not again', '2026-12-04', [offer('H', 'NUT', '50', 1)], '2026-11-25'],
    ['a day short: nobody can', '2026-11-27', [offer('H', 'NUT', '50', 1)], null],
    [
      'from whom an order is taken any day, two working days before',
      '2026-12-11',
      [offer('V', 'NUT', '1', 1)],
      '2026-12-08',
    ],
  ])('order by: %s', (_, by, offers, day) => {
    const suppliers = [...both, supplier('V', 2, { takesToday: true })];
    const week = weekOf(ask([demandFor('NUT', [wanted('C1', by, exact(4))])], offers, { suppliers }));
    expect([...week.groups, ...week.later].map(({ orderBy }) => orderBy)).toEqual([day]);
  });

  test('the shelf is filled up to its minimum with every order, and is never late', () => {
    const week = weekOf(ask([demandFor('NUT', [], exact(20))], [offer('H', 'NUT', '50', 1)]));
    expect(week.problem.lines).toMatchObject([{ key: 'NUT@shelf', quantity: 20, cars: [] }]);
  });

  test('what lies there for needs that can wait is still on the shelf; what they take is bought with them', () => {
    const later = {
      car: 'C1',
      by: '2027-03-01',
      quantity: exact(15),
      source: { kind: 'lot', lot: 'L' },
    } as const;
    const line = {
      ...demandFor('NUT', [], exact(20)),
      left: exact(3),
      allocations: [{ ...later, isLate: false }],
    };
    const { groups, later: wait } = weekOf(
      ask([{ ...line, demand: exact(17) }], [offer('H', 'NUT', '50', 1)]),
    );
    expect([groups, wait].map(([group]) => [group?.line, group?.steps])).toEqual([
      ['NUT@shelf', 2],
      ['NUT@shelf later', 15],
    ]);
  });

  test('what nobody offers is told, and is in no line', () => {
    const ended = { ...offer('H', 'PEN', '1', 1), ended: true };
    const week = weekOf(ask([demandFor('PEN', [wanted('C1', '2026-11-27', exact(1))])], [ended]));
    expect([week.unoffered.map(({ item }) => item), week.problem.lines]).toEqual([['PEN'], []]);
  });

  test('what was insisted on is bought with it, though it could wait', () => {
    const far = [wanted('C1', '2027-03-01', exact(4))];
    const pin = { supplier: null, quantity: '10', buyToday: false, isExcluded: false };
    const pins = [{ id: 'NUT', pin, since: '2026-11-25' }];
    const week = weekOf(ask([demandFor('NUT', far)], [offer('H', 'NUT', '50', 1)], { pins }));
    expect(week.problem).toMatchObject({ lines: [{ quantity: 4 }], pins: [{ group: 'NUT', quantity: 10 }] });
  });
});

describe('whole numbers', () => {
  test('a sum is rounded up once: two halves of a pen are one, and two cars get it', () => {
    const short = [wanted('C1', '2026-11-26', exact(1, 2)), wanted('C2', '2026-11-27', exact(1, 2))];
    const week = weekOf(ask([demandFor('PEN', short)], [offer('H', 'PEN', '1', 320)]));
    expect(week.groups.map(({ steps }) => steps)).toEqual([1, 0]);
    expect(week.problem.lines).toHaveLength(1);
  });

  test('metres are cut into steps in which every pack and every need is whole', () => {
    const short = [wanted('C1', '2026-11-26', exact(641, 100)), wanted('C2', '2026-11-27', exact(12, 10))];
    const offers = [offer('H', 'HOSE', '7.5', 1290), offer('H', 'HOSE', '25', 3100)];
    const week = weekOf(ask([demandFor('HOSE', short)], offers));
    expect(week.stepsOf.get('HOSE')).toBe(100);
    expect(week.problem.lines.map(({ quantity }) => quantity)).toEqual([641, 120]);
    expect(week.problem.offers.map(({ packSize }) => packSize)).toEqual([750, 2500]);
  });

  test('a need that never ends is rounded up in steps that the packs allow', () => {
    const short = [3, 1999].map((den) => wanted('C1', '2026-11-26', exact(1, den)));
    const { problem } = weekOf(ask([demandFor('HOSE', short)], [offer('H', 'HOSE', '0.5', 1)]));
    expect([problem.offers[0]?.packSize, problem.lines[0]?.quantity]).toEqual([3, 3]);
  });
});

describe('what may come in its place', () => {
  const short = [wanted('C1', '2026-11-26', exact(4))];
  const offers = ['M8x30', 'M8x25-10', 'M10x30'].map((item) => offer('H', item, '50', 100));

  test('what the plan names, of the same thread, without a lead’s word; nobody need offer the thing itself', () => {
    const week = weekOf(ask([demandFor('M8x25', short)], offers));
    expect(week.problem.lines).toMatchObject([{ item: 'M8x25', substitutes: ['M8x30'] }]);
  });

  test('not in a joint that the plan shuts out, nor on the shelf', () => {
    const inJoint = weekOf(ask([demandFor('M8x25', short, ZERO, 'J-320@L')], offers));
    expect(inJoint.unoffered).toHaveLength(1);
    const shelf = weekOf(ask([demandFor('M8x25', [], exact(10))], offers));
    expect(shelf.unoffered).toHaveLength(1);
  });
});

test('a quantity goes to the earliest first, what is over to the last; supplier and the rest to all', () => {
  const short = ['26', '27'].map((day) => wanted('C1', `2026-11-${day}`, exact(4)));
  const week = (quantity: string | null) => {
    const pin = { supplier: 'H', quantity, buyToday: true, isExcluded: false };
    const pins = [{ id: 'NUT', pin, since: '2026-11-25' }];
    return weekOf(ask([demandFor('NUT', short)], [offer('H', 'NUT', '50', 1)], { pins })).problem.pins;
  };
  expect(week('6').map(({ quantity }) => quantity)).toEqual([4, 2]);
  expect(week('11').map(({ quantity }) => quantity)).toEqual([4, 7]);
  expect(week(null)).toMatchObject([
    { line: 'NUT@2026-11-26', group: 'NUT', supplier: 'H', buyToday: true },
    { line: 'NUT@2026-11-27', group: 'NUT', supplier: 'H', buyToday: true },
  ]);
});
