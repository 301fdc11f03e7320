/** What work outside cost on a car, from the bills of its trips. Worked by hand; all money is invented. */
import { describe, expect, test } from 'vitest';
import { ZERO, exact } from '@/lib/domain/base/exact';
import type { Car } from '@/lib/domain/car/rows';
import { compilePlan } from '@/lib/domain/plan/compile';
import { outsideOf } from '@/lib/domain/shop/outside-cost';
import type { TripRow } from '@/lib/domain/shop/trip-rows';
import { plan } from '@/tests/support/shop';

const PLAN = compilePlan(
  plan({
    stages: { AX: { name: 'Axle' }, EN: { name: 'Engine' } },
    parts: { 'P-1': { name: 'Flywheel', origin: 'donor' }, 'P-2': { name: 'Head', origin: 'donor' } },
    operations: {
      'AX-010': { name: 'Blast and coat', stage: 'AX', outside: '7 d' },
      'EN-010': { name: 'Assemble', stage: 'EN', body: ['fit P-1'] },
    },
  }),
  {},
);
type Outings = Car['components'][string]['outings'];
const AT = '2026-03-02T08:00:00.000Z';
const out = (trip: string, how: 'done' | 'not-done' | null): Outings[number] => ({
  trip,
  work: 'face',
  due: '2026-03-09',
  sentBy: 'tom',
  sentAt: AT,
  back: how === null ? null : { how, note: null, by: 'tom', at: AT },
  looked: null,
});
const component = (outings: Outings): Car['components'][string] => ({
  piece: 1,
  grade: 'refurbish',
  place: null,
  serial: null,
  note: null,
  from: null,
  outings,
  by: 'tom',
  at: AT,
});
const bill = (freight: number, ...lines: readonly [string, string, number][]): TripRow['bills'][number] => ({
  lines: lines.map(([car, part, money]) => ({ car, part, money })),
  freight,
  note: null,
  by: 'leo',
  at: AT,
});
const trips = (bills: TripRow['bills']): Readonly<Record<string, TripRow>> => ({
  '1': { id: '1', supplier: 'oakum', goes: '2026-03-02', due: '2026-03-09', bills, by: 'leo', at: AT },
});
const of = (components: Car['components'], bills: TripRow['bills']) =>
  outsideOf(PLAN, { id: 'C1', components }, trips(bills));

describe('what is billed', () => {
  test('is the part’s own, in the stage that fits it, with its share of the way by value over all cars', () => {
    const bills = [bill(1800, ['C1', 'P-1', 3000], ['C2', 'P-1', 6000]), bill(200, ['C1', 'P-1', 1000])];
    // 2000 over 10,000: a fifth of 4000.
    expect(of({ 'P-1': component([out('1', 'done')]) }, bills)).toEqual([
      { part: 'P-1', stage: 1, work: 'face', trip: '1', money: 4000, freight: exact(800) },
    ]);
  });

  test('out twice on one trip is one bill; a part that no work fits has no stage', () => {
    const found = of({ 'P-2': component([out('1', 'not-done'), out('1', 'done')]) }, [
      bill(0, ['C1', 'P-2', 500]),
    ]);
    expect(found.map(({ stage, money }) => [stage, money])).toEqual([[null, 500]]);
  });
});

test('work that was done there on the car itself is known by its bill; work that is done here is on none', () => {
  const found = of({}, [bill(100, ['C1', 'AX-010', 9000], ['C1', 'EN-010', 500], ['C2', 'AX-010', 500])]);
  expect(found).toEqual([
    { part: 'AX-010', stage: 0, work: 'Blast and coat', trip: '1', money: 9000, freight: exact(90) },
  ]);
});

test('what was done or is out waits for its bill; what came back untouched costs nothing', () => {
  const found = of(
    {
      'P-1': component([out('1', 'done')]),
      'P-2': component([out('1', 'not-done')]),
      'P-3': component([out('1', null)]),
    },
    [],
  );
  expect(found.map(({ part, money, freight }) => [part, money, freight])).toEqual([
    ['P-1', null, ZERO],
    ['P-3', null, ZERO],
  ]);
});
