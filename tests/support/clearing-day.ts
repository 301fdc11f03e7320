/**
 * The day on which C54-012's gate is cleared: who does what, in order, with nothing but what the screens offer. Each
 * step names the codes that it is refused with; none = accepted. `clears` is the reason that is gone after it.
 */
import type { RefusalCode } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { CarClaim } from '@/lib/domain/commands';

export interface Step {
  readonly by: PersonId;
  readonly claim: CarClaim;
  readonly refused?: readonly RefusalCode[];
  readonly clears?: readonly RefusalCode[];
  /** What stands there in its place until its work is done. */
  readonly brings?: readonly RefusalCode[];
}

const car = 'C54-012';
const onward: CarClaim = { type: 'advance-car', car, to: 'WH' };

const bracket = { car, joint: 'J-213' } as const;
const torqued = { type: 'final-joint', ...bracket, passes: [[1, 2]], readings: ['45', '45.5'] } as const;
const looked = { type: 'verify-joint', ...bracket, method: 're-applied', tool: 'T-06' } as const;

const decided = {
  type: 'decide-finding',
  car,
  finding: 'F-1',
  disposition: 'rework',
  reason: 'Shoes up two notches, then the cable.',
} as const;
const handbrake = { travel: '5', shoes: 'yes', release: 'yes' };

const wrap = { type: 'remove-stopgap', car, stopgap: 'G-tap-1', quantity: 1 } as const;
const released = { type: 'release-hold', car, hold: 'H-1', reason: 'He fits.' } as const;

/** A failed check and its undecided finding are one reason. */
export const FIVE_KINDS: readonly (readonly RefusalCode[])[] = [
  ['joint-below-level'],
  ['joint-in-doubt'],
  ['check-not-clear', 'finding-undecided'],
  ['stopgap-in-place'],
  ['hold-stands'],
];

export const CLEARING_DAY: readonly Step[] = [
  { by: 'mara', claim: onward, refused: FIVE_KINDS.flat() },

  // 1. A joint is only snug: the technician torques it, the second person re-applies with another wrench.
  { by: 'tobit', claim: { ...torqued, tool: 'T-12' }, refused: ['tool-suspect'] },
  { by: 'tobit', claim: { ...torqued, tool: 'T-05' } },
  { by: 'ines', claim: looked, refused: ['not-independent'] },
  { by: 'oswin', claim: looked, clears: ['joint-below-level'] },

  // 2. A joint is in doubt, since its neighbour was opened: the technician tries it again, and nothing moves.
  {
    by: 'tobit',
    claim: { type: 'recheck-joint', car, joint: 'J-512', tool: 'T-08' },
    clears: ['joint-in-doubt'],
  },

  // 3. A check failed: the lead decides its finding; the technician does the work and passes the check, which closes it.
  { by: 'tobit', claim: decided, refused: ['not-allowed'] },
  { by: 'mara', claim: decided, clears: ['finding-undecided'], brings: ['finding-not-closed'] },
  {
    by: 'tobit',
    claim: { type: 'pass-check', car, check: 'K-52', values: handbrake },
    clears: ['check-not-clear', 'finding-not-closed'],
  },

  // 4. A stopgap is still in: the technician takes it out, as many as went in.
  { by: 'tobit', claim: wrap },
  { by: 'mara', claim: onward, refused: ['stopgap-in-place', 'hold-stands'] },
  { by: 'tobit', claim: wrap, clears: ['stopgap-in-place'] },

  // 5. A hold of scope gate: the lead releases it.
  { by: 'tobit', claim: released, refused: ['not-allowed'] },
  { by: 'mara', claim: released, clears: ['hold-stands'] },

  { by: 'mara', claim: onward },
];
