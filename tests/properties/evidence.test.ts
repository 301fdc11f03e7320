/**
 * Invariant 4: no joint counts with readings of another cycle, with a tool that was suspect where its error leaves the
 * window, or with hardware of a quarantined lot.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Step } from '@/tests/support/game';
import { whyNotBelieved } from '@/tests/support/oracle';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

const countsOnlyWhatIsSo =
  (rules: Rules) =>
  ({ after, log, events, game }: Step): void => {
    // A shop event may change what counts on every car; one of a car, on that car.
    const cars = events.some((event) => event.stream === 'shop')
      ? Object.values(after.cars)
      : Object.values(after.cars).filter((car) =>
          events.some((event) => event.stream === 'car' && event.car === car.id),
        );
    for (const car of cars)
      for (const joint of Object.keys(car.joints)) {
        if (rules.belowLevel(car, after.shop, joint, 'final') !== null) continue;
        const reasons = whyNotBelieved(log, car, after.shop, joint);
        if (reasons.length > 0)
          throw new Error(`invariant 4: ${joint} counts, but ${reasons.join('; ')}\n${game.told()}`);
      }
  };

const evidenceHolds = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, (history) => {
    playHistory(rules, history, countsOnlyWhatIsSo(rules));
  });

/** Opening keeps the marks: the level of the cycle before goes on counting. */
const cycleIsForgotten: Rules['evolve'] = (world, event) => {
  const after = RULES.evolve(world, event);
  if (event.type !== 'joint-opened') return after;
  const before = world.cars[event.car]?.joints[event.joint];
  const car = after.cars[event.car];
  const row = car?.joints[event.joint];
  if (car === undefined || row === undefined || before === undefined) return after;
  const joints = { ...car.joints, [event.joint]: { ...row, marks: before.marks } };
  return { ...after, cars: { ...after.cars, [car.id]: { ...car, joints } } };
};

/** Pieces are kept without the lot that they came from. */
const lotsAreNotKept: Rules['evolve'] = (world, event) => {
  if (event.type !== 'hardware-fitted') return RULES.evolve(world, event);
  const fasteners = Object.fromEntries(
    Object.entries(event.fasteners).map(([place, items]) => [
      place,
      Object.fromEntries(Object.entries(items).map(([item, piece]) => [item, { ...piece, lot: null }])),
    ]),
  );
  return RULES.evolve(world, { ...event, fasteners });
};

describe('invariant 4, what counts', () => {
  test('no other cycle, no suspect tool, no quarantined lot', () => {
    fc.assert(evidenceHolds(RULES), runs(400));
  });

  test.each<[string, Partial<Rules>]>([
    ['forget the cycle', { evolve: cycleIsForgotten }],
    ['do not keep lots', { evolve: lotsAreNotKept }],
    [
      'judge without tools',
      {
        belowLevel: (car, facts, joint, level) =>
          RULES.belowLevel(car, { ...facts, tools: {} }, joint, level),
      },
    ],
    [
      'judge without lots',
      {
        belowLevel: (car, facts, joint, level) => RULES.belowLevel(car, { ...facts, lots: {} }, joint, level),
      },
    ],
  ])('rules that %s are seen', (_, fault) => {
    const found = fc.check(evidenceHolds({ ...RULES, ...fault }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 4');
  });
});
