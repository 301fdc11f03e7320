/** The table of commands says what each may be refused for: no rule says anything else, and none comes without a reason. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMANDS } from '@/lib/domain/authority';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Command } from '@/lib/domain/commands';
import { playHistory, randomHistory } from '@/tests/support/random-history';
import { RULES, runs, untilRed } from '@/tests/support/rules';
import type { Rules } from '@/tests/support/rules';

/** Naming nothing, and asking for a person or a role, belong to every command. */
const ANYWHERE: readonly string[] = ['unknown-thing', 'unknown-person', 'not-allowed'];

const inTable = ({ claim }: Command, refusals: readonly Refusal[]): void => {
  const known: readonly string[] = COMMANDS[claim.type].refuses;
  const strange = refusals.filter(({ code }) => !ANYWHERE.includes(code) && !known.includes(code));
  if (strange.length > 0) throw new Error(`refusals: ${claim.type} says ${JSON.stringify(strange)}`);
  if (refusals.length === 0) throw new Error(`refusals: ${claim.type} is refused for nothing`);
};

const refusalsAreKnown = (rules: Rules): fc.IProperty<unknown> =>
  fc.property(randomHistory, (history) => {
    const decide: Rules['decide'] = (facts, world, command) => {
      const verdict = rules.decide(facts, world, command);
      if (!verdict.ok) inTable(command, verdict.error);
      return verdict;
    };
    playHistory({ ...rules, decide }, history);
  });

describe('refusals', () => {
  test('are those that the table of commands names', () => {
    fc.assert(refusalsAreKnown(RULES), runs(350));
  });

  test('one without a reason is seen', () => {
    const decide: Rules['decide'] = (facts, world, command) => {
      const verdict = RULES.decide(facts, world, command);
      return verdict.ok
        ? verdict
        : { ok: false, error: verdict.error.filter(({ code }) => code !== 'level-already') };
    };
    const found = fc.check(refusalsAreKnown({ ...RULES, decide }), untilRed(350));
    expect(found.failed).toBe(true);
    expect(String(found.errorInstance)).toContain('refusals: ');
  });
});
