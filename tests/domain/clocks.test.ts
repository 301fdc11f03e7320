import { beforeEach, describe, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { minutesOf, workSpans } from '@/lib/domain/hours';
import { touches } from '@/lib/domain/touches';
import { plan, shopWith } from '@/tests/support/shop';
import type { Shop } from '@/tests/support/shop';

const two = plan({
  stages: { AX: { name: 'Axle' } },
  operations: {
    'AX-010': { name: 'Hang the axle', stage: 'AX' },
    'AX-020': { name: 'Fit the rod', stage: 'AX' },
  },
});

describe('given a technician at work on one operation', () => {
  let shop: Shop;
  const events: Event[] = [];
  const does = (person: string, told: Parameters<Shop['does']>[1]): void => {
    events.push(...shop.does(person, told));
  };
  beforeEach(() => {
    shop = shopWith(two);
    events.length = 0;
    does('tom', { type: 'start-operation', operation: 'AX-010' });
  });

  test('then nothing else is started until that is paused, and the refusal names it', () => {
    const refusals = shop.refused('tom', { type: 'start-operation', operation: 'AX-020' });
    expect(refusals).toEqual([
      { code: 'clock-running', details: { person: 'tom', car: 'C1', operation: 'AX-010' } },
    ]);
    expect(shop.sentences(refusals)).toEqual([
      'Tom is at work on Hang the axle (AX-010) of C1, and a person has one running clock. Step out of it, pause or finish it first.',
    ]);
    does('tom', { type: 'pause-operation', operation: 'AX-010', leftAs: 'two bolts in' });
    does('tom', { type: 'start-operation', operation: 'AX-020' });
  });

  test.each(['join-operation', 'take-over-operation'] as const)(
    'then %s elsewhere is refused too',
    (type) => {
      does('tess', { type: 'start-operation', operation: 'AX-020' });
      expect(shop.codes('tom', { type, operation: 'AX-020' })).toEqual(['clock-running']);
    },
  );

  test('then what was paused meanwhile is not resumed beside it', () => {
    does('tess', { type: 'start-operation', operation: 'AX-020' });
    does('tess', { type: 'pause-operation', operation: 'AX-020' });
    expect(shop.codes('tom', { type: 'resume-operation', operation: 'AX-020' })).toEqual(['clock-running']);
  });

  test('then another car is no way round it', () => {
    shop.does('leo', { type: 'start-car', car: 'C2', plan: 'Corbel 54 r1', chassis: 'CH-2' });
    expect(shop.codes('tom', { type: 'start-operation', operation: 'AX-010', car: 'C2' })).toEqual([
      'clock-running',
    ]);
  });

  test('then it is free again once somebody took the work over, and anyone else never was held', () => {
    does('tess', { type: 'take-over-operation', operation: 'AX-010' });
    does('tom', { type: 'start-operation', operation: 'AX-020' });
    expect(shop.codes('tess', { type: 'join-operation', operation: 'AX-020' })).toEqual(['clock-running']);
  });

  test('then whoever would begin on two cars at once waits for their own clock', () => {
    const claim = { type: 'start-operation', car: 'C2', operation: 'AX-010' } as const;
    expect(touches({ id: 'c', doneAt: '', claim }, null, 'tom')).toEqual(['car:C2', 'clock:tom']);
  });

  test('then hours come from the log: joined, paused for all, taken over, finished', () => {
    shop.later('20 min');
    does('tess', { type: 'join-operation', operation: 'AX-010' });
    shop.later('30 min');
    does('tess', { type: 'pause-operation', operation: 'AX-010' });
    shop.later('1 h');
    does('tom', { type: 'resume-operation', operation: 'AX-010' });
    shop.later('10 min');
    does('vera', { type: 'take-over-operation', operation: 'AX-010' });
    const cars = events.filter((event) => event.stream === 'car');
    const spans = workSpans(cars);
    expect(spans.map(({ person, until }) => [person, until === null])).toEqual([
      ['tom', false],
      ['tess', false],
      ['tom', false],
      ['vera', true],
    ]);
    const [began, joined, paused, resumed, took] = cars.map(({ meta }) => Date.parse(meta.at) / 60_000);
    const at = (minute: number | undefined): number => minute ?? Number.NaN;
    const now = new Date((at(took) + 7) * 60_000).toISOString();
    expect(minutesOf(spans, now)).toEqual({
      tom: at(paused) - at(began) + (at(took) - at(resumed)),
      tess: at(paused) - at(joined),
      vera: 7,
    });
    expect(at(took) - at(began)).toBeGreaterThanOrEqual(120);
  });
});
