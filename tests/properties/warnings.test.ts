/** Invariant 2: a warning that names a thing that is there, by someone who may, is accepted in every reachable state. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMANDS } from '@/lib/domain/authority';
import { refuse } from '@/lib/domain/base/refusals';
import { err } from '@/lib/domain/base/result';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { Claim, ClaimType } from '@/lib/domain/commands';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { LEAD, TRIP } from '@/tests/support/game';
import type { Game, Timing } from '@/tests/support/game';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

const at = <T>(list: readonly T[], drawn: number): T | undefined =>
  list.length === 0 ? undefined : list[drawn % list.length];

const WARNINGS: readonly ClaimType[] = (Object.keys(COMMANDS) as ClaimType[]).filter(
  (type) => COMMANDS[type].kind === 'warning',
);

/** One warning of each kind about what is there now; empty where there is nothing of its kind. */
const warningsAbout = (game: Game, car: Car, plan: CompiledPlan, drawn: number): readonly Claim[] => {
  const on = { car: car.id };
  const joint = at([...plan.joints.values()], drawn);
  const check = at([...plan.checks.keys()], drawn);
  const operation = at([...plan.operations.keys()], drawn);
  const condition = at(Object.keys(plan.document.conditions ?? {}), drawn);
  const part = at(Object.keys(plan.document.parts ?? {}), drawn);
  const stopgap = at([...plan.stopgaps.keys()], drawn);
  const signature = at(Object.keys(car.signatures), drawn);
  const tool = at(Object.keys(game.world.shop.tools), drawn);
  const lot = at(Object.keys(game.world.shop.lots), drawn);
  const earlier = plan.stages[drawn % Math.max(1, car.stage)];
  // A cycle or a round that is long over, or not yet: noted, never a reason.
  const stale = drawn % 7;
  const fastener = joint === undefined ? undefined : at(joint.order, drawn);
  const hands = Object.values(game.world.shop.people).flatMap(({ id, roles }) =>
    roles.includes('owner') ? [] : [id],
  );
  return [
    { type: 'suspect-tool', tool: tool ?? '', reason: 'dropped' },
    { type: 'quarantine-lot', lot: lot ?? '', reason: 'recalled' },
    { type: 'draw-stock', item: 'bolt', lot: lot ?? '', quantity: '99', reason: 'lost' },
    { type: 'place-hold', ...on, scope: 'work', reason: 'wait' },
    { type: 'place-stopgap', ...on, what: 'strap' },
    { type: 'report-finding', ...on, about: { kind: 'place', key: 'sill' }, text: 'dent' },
    ...(joint === undefined || fastener === undefined
      ? []
      : ([
          { type: 'open-joint', ...on, joint: joint.stateKey, cycle: stale },
          { type: 'open-joint', ...on, joint: joint.stateKey, fasteners: [fastener] },
          { type: 'reject-joint', ...on, joint: joint.stateKey, cycle: stale, reason: 'loose' },
          { type: 'report-disturbed', ...on, joint: joint.stateKey, cycle: stale, cause: 'moved' },
          {
            type: 'report-over-torque',
            ...on,
            joint: joint.stateKey,
            cycle: stale,
            fastener,
            reading: '99',
            unit: 'N·m',
          },
          { type: 'report-finding', ...on, about: { kind: 'joint', key: joint.stateKey }, text: 'rust' },
        ] satisfies Claim[])),
    ...(check === undefined
      ? []
      : ([
          { type: 'fail-check', ...on, check, round: stale, reason: 'weeps' },
          { type: 'report-finding', ...on, about: { kind: 'check', key: check }, text: 'doubtful' },
        ] satisfies Claim[])),
    ...(operation === undefined
      ? []
      : ([
          { type: 'pause-operation', ...on, operation, run: stale },
          { type: 'leave-operation', ...on, operation, run: stale },
          { type: 'report-kit-line', ...on, operation, item: 'bolt', what: 'damaged', quantity: '2' },
        ] satisfies Claim[])),
    ...(condition === undefined
      ? []
      : ([{ type: 'clear-condition', ...on, condition, reason: 'seen' }] satisfies Claim[])),
    ...(part === undefined
      ? []
      : ([
          { type: 'take-part', ...on, part, reason: 'needed' },
          { type: 'send-parts', ...on, trip: TRIP, parts: [{ part, work: 'skim' }] },
          { type: 'report-finding', ...on, about: { kind: 'part', key: part }, text: 'bent' },
        ] satisfies Claim[])),
    ...(stopgap === undefined ? [] : ([{ type: 'place-stopgap', ...on, stopgap }] satisfies Claim[])),
    ...(signature === undefined
      ? []
      : ([{ type: 'strike-signature', ...on, signature, reason: 'mine' }] satisfies Claim[])),
    ...(car.stage === 0 || earlier === undefined
      ? []
      : ([{ type: 'send-back', ...on, to: earlier.key, reason: 'again' }] satisfies Claim[])),
    // An owner is let out by an owner only.
    { type: 'remove-person', person: at(hands, drawn) ?? '' },
  ];
};

/** Somebody who may: the lead always; anyone where the table says anyone and no signature is at stake. */
const whoMay = (type: ClaimType, people: readonly PersonId[], drawn: number): PersonId =>
  COMMANDS[type].roles === 'anyone' && type !== 'strike-signature' ? (at(people, drawn) ?? LEAD) : LEAD;

const LATE: readonly Timing[] = [
  {},
  { lateMinutes: 300 },
  { lateMinutes: 90, contactMinutes: 10 },
  { lateMinutes: -60 },
];

const warningsAreHeard = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, fc.nat({ max: 9999 }), (history, start) => {
    let drawn = start;
    let seen = 0;
    playHistory(rules, history, ({ game, after, line }) => {
      seen += 1;
      const id = 'car' in line.command.claim ? line.command.claim.car : undefined;
      const car = id === undefined ? undefined : after.cars[id];
      // Every second state, with another thing of each kind each time.
      if (car === undefined || seen % 2 === 0) return;
      drawn = (drawn * 31 + 7) % 10_007;
      const people = Object.values(after.shop.people).flatMap((each) => (each.left ? [] : [each.id]));
      for (const claim of warningsAbout(game, car, game.plan(car), drawn)) {
        const warning = game.lineOf(whoMay(claim.type, people, drawn), claim, at(LATE, drawn));
        const verdict = game.judge(warning);
        if (!verdict.ok)
          throw new Error(
            `invariant 2: ${JSON.stringify(claim)} by ${warning.by} is refused: ${JSON.stringify(verdict.error)}\n${game.told()}`,
          );
      }
    });
  });

const refusing =
  (isRefused: (car: Car, claim: Claim) => boolean): Rules['decide'] =>
  (facts, world, command) => {
    const { claim } = command;
    const car = 'car' in claim ? world.cars[claim.car] : undefined;
    return car !== undefined && isRefused(car, claim)
      ? err([refuse('car-delivered', { car: car.id })])
      : RULES.decide(facts, world, command);
  };

describe('invariant 2, warnings', () => {
  test('every kind of warning is asked', () => {
    const asked = new Set<ClaimType>();
    const plan = fc.sample(randomHistory, { seed: 1, numRuns: 60 });
    for (const history of plan)
      playHistory(RULES, history, ({ game, after }) => {
        const car = after.cars['one'];
        if (car !== undefined)
          for (const claim of warningsAbout(game, car, game.plan(car), 5)) asked.add(claim.type);
      });
    expect([...asked].filter((type) => COMMANDS[type].kind === 'warning').sort()).toEqual(
      [...WARNINGS].sort(),
    );
  });

  test('no warning is refused for the state of things', () => {
    fc.assert(warningsAreHeard(RULES), runs(350));
  });

  test.each<[string, (car: Car, claim: Claim) => boolean]>([
    [
      'on a car on hold',
      (car, { type }) =>
        type === 'open-joint' && Object.values(car.holds).some((each) => each.releasedBy === null),
    ],
    ['on a delivered car', (car, { type }) => type === 'report-finding' && car.delivered],
    [
      'for a stale cycle',
      (car, claim) =>
        claim.type === 'report-disturbed' && (claim.cycle ?? 1) < (car.joints[claim.joint]?.cycle ?? 1),
    ],
    [
      'of a check that is clear',
      (car, claim) => claim.type === 'fail-check' && car.checks[claim.check]?.status === 'clear',
    ],
  ])('rules that refuse one %s are seen', (_, isRefused) => {
    const found = fc.check(warningsAreHeard({ ...RULES, decide: refusing(isRefused) }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 2');
  });
});
