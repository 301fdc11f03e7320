/** Invariant 3: who verifies had no hand in that cycle: did not fit, snug or torque it, and was not on the work (D26). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Event } from '@/lib/domain/events';
import { drive } from '@/tests/support/drive';
import { CARS, Game, PEOPLE, openShop, startCar } from '@/tests/support/game';
import type { Step } from '@/tests/support/game';
import { cycleOf } from '@/tests/support/oracle';
import { randomPlan } from '@/tests/support/random-plan';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

/** At the moment of verifying, by the log up to it. */
const verifiersAreApart = ({ events, log, game }: Step): void => {
  for (const event of events) {
    if (event.stream !== 'car' || event.type !== 'joint-marked' || event.mark.level !== 'verified') continue;
    const past = log.slice(0, log.indexOf(event));
    const { hands, marks } = cycleOf(past, event.car, event.joint);
    if (hands.has(event.mark.by) || event.mark.by !== event.meta.by)
      throw new Error(`invariant 3: ${event.mark.by} had a hand in ${event.joint}\n${game.told()}`);
    if (!marks.some(({ mark }) => mark.level === 'final'))
      throw new Error(
        `invariant 3: ${event.joint} is verified and was never final in this cycle\n${game.told()}`,
      );
  }
};

/** And after it: who stands as its verifier does not fit, snug or torque it while it stands verified. */
const verifiersStayApart = ({ after, events, log, game }: Step): void => {
  for (const event of events) {
    if (event.stream !== 'car' || event.type !== 'joint-marked') continue;
    const row = after.cars[event.car]?.joints[event.joint];
    const last = row?.marks.filter((mark) => !mark.struck).at(-1);
    if (last?.level !== 'verified') continue;
    const turned = cycleOf(log, event.car, event.joint).marks.filter(({ mark }) => mark.level !== 'verified');
    if (turned.some(({ mark }) => mark.by === last.by))
      throw new Error(`invariant 3: ${last.by} verified ${event.joint} and turned it too\n${game.told()}`);
  }
};

const independent = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, (history) => {
    playHistory(rules, history, (step) => {
      verifiersAreApart(step);
      verifiersStayApart(step);
    });
  });

/**
 * What histories seldom come to: all who can join whatever runs, the work falls due again or not, and then everybody
 * tries to verify everything.
 */
const noHandIsForgotten = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomPlan, fc.nat({ max: 60 }), fc.nat({ max: 12 }), (plan, before, after) => {
    const car = CARS[0] ?? '';
    const game = new Game(rules, plan, verifiersAreApart);
    openShop(game);
    startCar(game, car);
    drive(game, rules, car, before);
    for (const [operation, { status }] of Object.entries(game.car(car).operations))
      if (status === 'running')
        for (const { id } of PEOPLE) game.play(id, { type: 'join-operation', car, operation });
    drive(game, rules, car, after);
    for (const condition of Object.keys(plan.conditions ?? {}))
      game.play('zed', { type: 'clear-condition', car, condition, reason: 'lost' });
    for (const joint of game.plan(game.car(car)).joints.values())
      for (const { id } of PEOPLE) {
        const method = joint.verify ?? 'seen';
        game.play(id, { type: 'verify-joint', car, joint: joint.stateKey, method, tool: 'W-1' });
      }
  });

/** Judges a verification as if somebody else gave it, and writes down who did. */
const anybodyVerifies: Rules['decide'] = (facts, world, command) => {
  const verdict = RULES.decide(facts, world, command);
  if (verdict.ok || command.claim.type !== 'verify-joint') return verdict;
  if (!verdict.error.every(({ code }) => code === 'not-independent')) return verdict;
  for (const actor of Object.keys(facts.people)) {
    const other = RULES.decide({ ...facts, actor }, world, command);
    if (!other.ok) continue;
    return { ok: true, value: other.value.map((event): Event => signedBy(event, facts.actor)) };
  }
  return verdict;
};
const signedBy = (event: Event, by: string): Event =>
  event.type === 'joint-marked'
    ? { ...event, meta: { ...event.meta, by }, mark: { ...event.mark, by } }
    : event;

/** Forgets everyone but who gave the command: those who were on the work may verify. */
const crewIsForgotten: Rules['evolve'] = (world, event) => {
  if (event.type === 'joint-marked')
    return RULES.evolve(world, { ...event, mark: { ...event.mark, crew: [], run: null } });
  return RULES.evolve(world, event);
};

describe('invariant 3, verifying', () => {
  test('the verifier had no hand in the cycle', () => {
    fc.assert(independent(RULES), runs(400));
  });

  test('nor is a hand forgotten when the work falls due again', () => {
    fc.assert(noHandIsForgotten(RULES), runs(350));
  });

  test.each<[string, Partial<Rules>]>([
    ['let the fitter verify', { decide: anybodyVerifies }],
    ['forget who was on the work', { evolve: crewIsForgotten }],
  ])('rules that %s are seen', (_, fault) => {
    const found = fc.check(independent({ ...RULES, ...fault }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 3');
  });
});
