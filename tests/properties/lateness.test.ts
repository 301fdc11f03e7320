/**
 * Invariant 10: nothing is accepted late that would not have been accepted on time. The same claim on the same car: heard
 * at once, and heard hours later, after the shop has learnt more about its tools.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SUSPECT_REASONS } from '@/lib/domain/base/vocabulary';
import type { Claim, Command } from '@/lib/domain/commands';
import { factsAt } from '@/lib/domain/play';
import type { World } from '@/lib/domain/world';
import { finalClaim } from '@/tests/support/drive';
import { CARS, LEAD, instant } from '@/tests/support/game';
import type { Game } from '@/tests/support/game';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

const HOUR = 3_600_000;

const news = fc.array(
  fc.record({
    kind: fc.constantFrom('suspect', 'found low', 'found high', 'found good', 'quarantine'),
    /** Mostly of the two tools that are used most, so that one piece of news follows on another. */
    tool: fc.nat({ max: 9 }).map((drawn) => (drawn < 8 ? drawn % 2 : drawn)),
    reason: fc.constantFrom(...SUSPECT_REASONS),
    /** Hours before it is told, from which it is said to be so. */
    since: fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
    /** Hours after the claim was done at which it is told; some is told before. */
    told: fc.integer({ min: -3, max: 5 }),
  }),
  { minLength: 1, maxLength: 4 },
);
type News = typeof news extends fc.Arbitrary<readonly (infer Each)[]> ? Each : never;

const at = <T>(list: readonly T[], drawn: number): T | undefined =>
  list.length === 0 ? undefined : list[drawn % list.length];

const shopClaim = (game: Game, { kind, tool, reason, since }: News, now: number): Claim => {
  const id = at(Object.keys(game.world.shop.tools), tool) ?? 'W-1';
  if (kind === 'suspect')
    return {
      type: 'suspect-tool',
      tool: id,
      reason,
      ...(since === undefined ? {} : { from: instant(now - since * HOUR) }),
    };
  if (kind === 'quarantine')
    return {
      type: 'quarantine-lot',
      lot: at(Object.keys(game.world.shop.lots), tool) ?? '',
      reason: 'recalled',
    };
  // Its calibration still runs: what the bench finds is news, the new sticker is none.
  const delivered = kind === 'found low' ? '90' : kind === 'found high' ? '110' : '100';
  return {
    type: 'record-calibration',
    tool: id,
    on: instant(now).slice(0, 10),
    due: '2027-12-31',
    asFound: [{ set: '100', delivered }],
  };
};

/** What might be claimed of a joint with a tool. */
const claimsOf = (game: Game, car: string, drawn: number, tool: string): readonly Claim[] => {
  const joint = at([...game.plan(game.car(car)).joints.values()], drawn);
  const known = game.world.shop.tools[tool];
  if (joint === undefined || known === undefined) return [];
  return [
    finalClaim(car, joint, known),
    { type: 'recheck-joint', car, joint: joint.stateKey, tool },
    { type: 'verify-joint', car, joint: joint.stateKey, method: joint.verify ?? 'seen', tool },
    ...[...game.plan(game.car(car)).checks.keys()].map((check): Claim => ({
      type: 'pass-check',
      car,
      check,
      values: {},
      tool,
    })),
  ];
};

/**
 * What the moment of doing decides. The rest is judged in the order in which the shop hears of it (D1): a doubt that a bench
 * test has settled since is settled for a late claim too.
 */
const BY_THE_MOMENT: readonly string[] = [
  'tool-suspect',
  'tool-out-of-calibration',
  'tool-cycles-used-up',
  'not-qualified',
  'check-too-short',
  'wait-running',
];

let accepted = 0;

const lateIsNoBetter = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, news, fc.nat({ max: 99 }), (history, list, drawn) => {
    const game = playHistory(rules, history);
    const car = CARS[0] ?? '';
    const done = game.now + 8 * HOUR;
    const sorted = [...list].sort((a, b) => a.told - b.told);
    const usable = Object.values(game.world.shop.tools).filter(({ calibrations }) => calibrations.length > 0);
    const tell = (each: News): void => {
      const now = done + each.told * HOUR;
      const line = {
        now: instant(now),
        by: LEAD,
        command: {
          id: `n-${String(each.told)}-${String(each.tool)}`,
          doneAt: instant(now),
          claim: shopClaim(game, each, now),
        },
      };
      const verdict = rules.decide(factsAt(game.world, game.stage, line), game.world, line.command);
      if (verdict.ok)
        game.world = verdict.value.reduce((world, event) => rules.evolve(world, event), game.world);
    };
    for (const each of sorted) if (each.told <= 0) tell(each);
    const then = game.world;
    for (const each of sorted) if (each.told > 0) tell(each);
    const later = game.world;
    const judge = (world: World, now: number, by: string, command: Command): ReturnType<Rules['decide']> =>
      rules.decide(factsAt(world, game.stage, { now: instant(now), by, command }), world, command);
    for (const [index, { id }] of usable.entries())
      for (const claim of claimsOf(game, car, drawn + index, id))
        for (const by of ['tim', 'una', 'vic']) {
          const command: Command = { id: 'late', doneAt: instant(done), claim };
          if (!judge(later, done + 6 * HOUR, by, command).ok) continue;
          accepted += 1;
          const onTime = judge(then, done, by, command);
          if (onTime.ok || !onTime.error.some(({ code }) => BY_THE_MOMENT.includes(code))) continue;
          throw new Error(
            `invariant 10: ${JSON.stringify(claim)} by ${by} is accepted late; on time: ${JSON.stringify(onTime.error)}; news: ${JSON.stringify(list)}\n${game.told()}`,
          );
        }
  });

/** What comes late is believed: nobody asks any more whether the tool was known to be bad. */
const lateIsBelieved: Rules['decide'] = (facts, world, command) => {
  if (facts.judgedAt >= facts.now) return RULES.decide(facts, world, command);
  const tools = Object.fromEntries(
    Object.entries(facts.tools).map(([id, tool]) => [id, { ...tool, suspect: [] }]),
  );
  return RULES.decide({ ...facts, tools }, world, command);
};

/** A bench test wipes out the suspicion before it. */
const benchWipesOut: Rules['evolve'] = (world, event) => {
  const after = RULES.evolve(world, event);
  if (event.type !== 'tool-tested') return after;
  const tool = after.shop.tools[event.tool];
  if (tool === undefined) return after;
  return {
    ...after,
    shop: { ...after.shop, tools: { ...after.shop.tools, [tool.id]: { ...tool, suspect: [] } } },
  };
};

describe('invariant 10, late news', () => {
  test('what is accepted late would have been accepted on time', () => {
    accepted = 0;
    fc.assert(lateIsNoBetter(RULES), runs(350));
    // Not empty of meaning: many late claims were accepted.
    expect(accepted).toBeGreaterThan(50);
  });

  test.each<[string, Partial<Rules>]>([
    ['believe what is late', { decide: lateIsBelieved }],
    ['let a bench test wipe out a suspicion', { evolve: benchWipesOut }],
  ])('rules that %s are seen', (_, fault) => {
    const found = fc.check(lateIsNoBetter({ ...RULES, ...fault }), untilRed(400));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('invariant 10');
  });
});
