/**
 * C54-012 stands at a gate that five different kinds of reason keep closed. They are cleared with nothing but what the
 * screens offer: job by job, the hold's own line, the plate on the board. Then it passes.
 */
import { expect, test } from 'vitest';
import type { CarClaim, ClaimType } from '@/lib/domain/commands';
import { play } from '@/lib/domain/play';
import { CLEARING_DAY, FIVE_KINDS } from '@/tests/support/clearing-day';
import { assessAt, demoOn } from '@/tests/support/demo';

const { world: shown, stage, lines } = demoOn('2026-11-25');
const car = 'C54-012';

const WITHOUT_JOB: readonly ClaimType[] = ['release-hold', 'advance-car'];

/** The acts of the jobs that are about what the claim names. */
const offered = (claim: CarClaim, jobs: ReturnType<typeof assessAt>['jobs']): readonly ClaimType[] => {
  const named: readonly unknown[] = Object.values(claim);
  return [...WITHOUT_JOB, ...jobs.filter(({ key }) => named.includes(key)).flatMap(({ allows }) => allows)];
};

test('is closed for five kinds of reason, which technician, lead and second person clear one by one', () => {
  let world = shown;
  let clock = Date.parse(lines.at(-1)?.now ?? '');
  const gateNow = (): readonly string[] => {
    const { gate } = assessAt(stage, world, { car, by: 'mara', now: new Date(clock).toISOString() });
    return gate.unmet.map(({ code }) => code).toSorted();
  };
  let left: readonly string[] = FIVE_KINDS.flat().toSorted();
  for (const { by, claim, refused = [], clears = [], brings = [] } of CLEARING_DAY) {
    expect(gateNow()).toEqual(left);
    clock += 600_000;
    const now = new Date(clock).toISOString();
    expect(offered(claim, assessAt(stage, world, { car, by, now }).jobs)).toContain(claim.type);
    const played = play(world, stage, { now, by, command: { id: `day-${now}`, doneAt: now, claim } });
    world = played.world;
    const codes = played.verdict.ok ? [] : played.verdict.error.map(({ code }) => code);
    expect([by, claim.type, ...codes.toSorted()]).toEqual([by, claim.type, ...refused.toSorted()]);
    left = [...left.filter((code) => !clears.some((cleared) => cleared === code)), ...brings].toSorted();
  }
  expect(world.cars[car]?.stage).toBe(6);
});

test('each of the five kinds is there once', () => {
  const { gate } = assessAt(stage, shown, { car, by: 'mara', now: lines.at(-1)?.now ?? '' });
  const codes = gate.unmet.map(({ code }) => code);
  expect(codes.toSorted()).toEqual(FIVE_KINDS.flat().toSorted());
});
