/** Invariant 1: at every crossing of a gate nothing that is due by then is unmet, but for overridden soft refusals. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Refusal } from '@/lib/domain/base/refusals';
import { ok } from '@/lib/domain/base/result';
import type { CarEvent } from '@/lib/domain/events';
import { planOf } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { World } from '@/lib/domain/world';
import type { Step } from '@/tests/support/game';
import { dueAndUnmet } from '@/tests/support/oracle';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

const isRoomFor = (plan: PlanDocument, world: World, car: string, stage: number): boolean => {
  const capacity = Object.values(plan.stages)[stage]?.capacity;
  const others = Object.values(world.cars).filter(
    (each) => each.id !== car && each.stage === stage && !each.delivered,
  );
  return capacity === undefined || others.length < capacity;
};

const atCrossing = (plan: PlanDocument, { before, log, events, game }: Step, event: CarEvent): void => {
  if (event.type !== 'gate-passed' && event.type !== 'car-delivered') return;
  const car = before.cars[event.car];
  if (car === undefined) throw new Error('invariant 1: a car that is not there crosses a gate');
  const past = log.slice(0, log.length - events.length);
  const unmet = [...dueAndUnmet(plan, car, before.shop, car.stage, past)];
  if (event.type === 'gate-passed') {
    if (event.to !== car.stage + 1) unmet.push('more than one gate at a time');
    if (!isRoomFor(plan, before, car.id, event.to) && !event.overridden.includes('room-full'))
      unmet.push('there is no room and nobody overrode it');
  } else if (car.stage !== Object.keys(plan.stages).length - 1) unmet.push('not the last gate');
  if (unmet.length > 0) throw new Error(`invariant 1: ${unmet.join('; ')}\n${game.told()}`);
};

const gatesAreKept = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, (history) => {
    playHistory(rules, history, (step) => {
      for (const event of step.events) if (event.stream === 'car') atCrossing(history.plan, step, event);
    });
  });

/** A gate that does not see some reasons: where all that stands against it are of these, the car goes through. */
const blindTo =
  (isUnseen: (refusal: Refusal) => boolean): Rules['decide'] =>
  (facts, world, command) => {
    const verdict = RULES.decide(facts, world, command);
    const { claim } = command;
    const car = claim.type === 'advance-car' ? world.cars[claim.car] : undefined;
    const plan = car === undefined ? null : planOf(facts, car);
    const next = plan?.stages[(car?.stage ?? 0) + 1];
    if (verdict.ok || car === undefined || next === undefined || !verdict.error.every(isUnseen))
      return verdict;
    const from = plan?.stages[car.stage]?.key ?? '';
    const meta = {
      command: command.id,
      by: facts.actor,
      at: facts.judgedAt,
      doneAt: command.doneAt,
      receivedAt: facts.now,
      clockDoubted: facts.clockDoubted,
      device: facts.device,
      batch: null,
    };
    return ok([
      {
        ...{
          type: 'gate-passed',
          from: car.stage,
          to: next.index,
          stage: from,
          overridden: [],
          reason: null,
        },
        ...{ v: 1, stream: 'car', car: car.id, meta },
      },
    ]);
  };

const DUE_LIST = ['operation-unfinished', 'joint-below-level', 'check-not-clear'];

describe('invariant 1, gates', () => {
  test('nothing due by then is unmet', () => {
    fc.assert(gatesAreKept(RULES), runs(400));
  });

  test.each<[string, (refusal: Refusal) => boolean]>([
    ['the due list', ({ code }) => DUE_LIST.includes(code)],
    ['doubts', ({ code }) => code === 'joint-in-doubt'],
    [
      'joints that are not verified',
      ({ code, details }) => code === 'joint-below-level' && details.level === 'final',
    ],
    ['stopgaps', ({ code }) => code === 'stopgap-in-place'],
    ['the entry of the next stage', ({ code }) => code === 'condition-true' || code === 'condition-not-true'],
    ['findings', ({ code }) => code.startsWith('finding-')],
    ['holds', ({ code }) => code === 'hold-stands'],
    ['a full room', ({ code }) => code === 'room-full'],
  ])('a gate that skips %s is seen', (_, isUnseen) => {
    const found = fc.check(gatesAreKept({ ...RULES, decide: blindTo(isUnseen) }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 1');
  });
});
