/**
 * C54-012 stands at a gate that five different kinds of reason keep closed. This is the day on which they are cleared,
 * with nothing but the commands that the screens offer: job by job, and what is on the hold and on the board.
 */
import { expect, test } from 'vitest';
import type { RefusalCode } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { CarClaim, ClaimType } from '@/lib/domain/commands';
import { play } from '@/lib/domain/play';
import type { World } from '@/lib/domain/world';
import { assessAt, demoOn } from '@/tests/support/demo';

const CAR = 'C54-012';
const { world: shown, stage, lines } = demoOn('2026-11-25');

/** Offered where it stands, without a job: the hold's own line and the plate on the board. */
const WITHOUT_JOB: readonly ClaimType[] = ['release-hold', 'advance-car'];

class Day {
  world: World = shown;
  private clock = Date.parse(lines.at(-1)?.now ?? '');

  private get now(): string {
    return new Date(this.clock).toISOString();
  }

  /** Which kinds of reason keep the gate closed now. */
  gate(): readonly RefusalCode[] {
    const { gate } = assessAt(stage, this.world, { car: CAR, by: 'mara', now: this.now });
    return gate.unmet.map(({ code }) => code);
  }

  /** Given by that person ten minutes later; only what a screen would offer. */
  give(by: PersonId, claim: CarClaim): readonly RefusalCode[] {
    this.clock += 600_000;
    if (!WITHOUT_JOB.includes(claim.type)) {
      const { jobs } = assessAt(stage, this.world, { car: CAR, by, now: this.now });
      const named: readonly string[] = Object.values(claim).filter((value) => typeof value === 'string');
      const offered = jobs.filter(({ key }) => named.includes(key)).flatMap(({ allows }) => allows);
      expect(offered).toContain(claim.type);
    }
    const command = { id: `day-${this.now}`, doneAt: this.now, claim };
    const { world, verdict } = play(this.world, stage, { now: this.now, by, command });
    this.world = world;
    return verdict.ok ? [] : [...new Set(verdict.error.map(({ code }) => code))];
  }
}

const onward: CarClaim = { type: 'advance-car', car: CAR, to: 'WH' };
const bracket = { car: CAR, joint: 'J-213' } as const;

test('closed for five kinds of reason, cleared one by one by technician, lead and second person, then passed', () => {
  const day = new Day();
  expect(day.give('mara', onward).toSorted()).toEqual([
    'check-not-clear',
    'finding-undecided', // the failed check's: one reason with it
    'hold-stands',
    'joint-below-level',
    'joint-in-doubt',
    'stopgap-in-place',
  ]);

  // 1. A joint is only snug: the technician torques it, the second person re-applies with another wrench.
  const torqued = { type: 'final-joint', ...bracket, passes: [[1, 2]], readings: ['45', '45.5'] } as const;
  expect(day.give('tobit', { ...torqued, tool: 'T-12' })).toEqual(['tool-suspect']);
  expect(day.give('tobit', { ...torqued, tool: 'T-05' })).toEqual([]);
  const looked = { type: 'verify-joint', ...bracket, method: 're-applied', tool: 'T-06' } as const;
  expect(day.give('ines', looked)).toEqual(['not-independent']);
  expect(day.give('oswin', looked)).toEqual([]);
  expect(day.gate()).not.toContain('joint-below-level');

  // 2. A joint is in doubt, since its neighbour was opened: the technician tries it again, and nothing moves.
  expect(day.give('tobit', { type: 'recheck-joint', car: CAR, joint: 'J-512', tool: 'T-08' })).toEqual([]);
  expect(day.gate()).not.toContain('joint-in-doubt');

  // 3. A check failed: the lead decides its finding, the technician does the work and passes the check, which closes it.
  const decided = {
    type: 'decide-finding',
    car: CAR,
    finding: 'F-1',
    disposition: 'rework',
    reason: 'shoes up two notches, then the cable',
  } as const;
  expect(day.give('tobit', decided)).toEqual(['not-allowed']);
  expect(day.give('mara', decided)).toEqual([]);
  const values = { travel: '5', shoes: 'yes', release: 'yes' };
  expect(day.give('tobit', { type: 'pass-check', car: CAR, check: 'K-52', values })).toEqual([]);
  expect(day.gate().toSorted()).toEqual(['hold-stands', 'stopgap-in-place']);

  // 4. A stopgap is still in: the technician takes it out, as many as went in.
  const out = { type: 'remove-stopgap', car: CAR, stopgap: 'G-tap-1' } as const;
  expect(day.give('tobit', { ...out, quantity: 1 })).toEqual([]);
  expect(day.gate().toSorted()).toEqual(['hold-stands', 'stopgap-in-place']);
  expect(day.give('tobit', { ...out, quantity: 1 })).toEqual([]);

  // 5. A hold of scope gate: the lead releases it.
  expect(day.gate()).toEqual(['hold-stands']);
  const released = { type: 'release-hold', car: CAR, hold: 'H-1', reason: 'He fits.' } as const;
  expect(day.give('tobit', released)).toEqual(['not-allowed']);
  expect(day.give('mara', released)).toEqual([]);

  expect(day.gate()).toEqual([]);
  expect(day.give('mara', onward)).toEqual([]);
  expect(day.world.cars[CAR]?.stage).toBe(6);
});
