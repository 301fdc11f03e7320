/**
 * A signature was wrong. It stays readable, struck through; the level before it comes back, nothing is bought,
 * and the signatures that rested on it are struck with it.
 */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { JointRow } from '@/lib/domain/car/joint-rows';
import type { SignatureRow } from '@/lib/domain/car/rows';
import type { CarPayload } from '@/lib/domain/events';
import { accept, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { conditionCleared, distinct } from './consequences';

export const strike = (at: Case, claim: CarClaimOf<'strike-signature'>): Decision => {
  const id = claim.signature;
  const row = at.car.signatures[id];
  if (row === undefined) return unknown('signature', id);
  const refusals = authority(at, id, row);
  if (refusals.length === 0 && row.struck !== null) return accept();
  return unless(refusals, () => [
    { type: 'signature-struck', signature: id, reason: claim.reason },
    ...distinct(undone(at, id, row, claim.reason)),
  ]);
};

/** One's own until it is verified or rests under somebody else's; then the lead. */
const authority = (at: Case, id: string, row: SignatureRow): readonly Refusal[] => {
  const { facts, car } = at;
  const isLead = facts.people[facts.actor]?.roles.includes('lead') ?? false;
  if (isLead) return [];
  const joint = car.joints[row.subject];
  const restsOnIt = joint === undefined ? [] : above(joint, id);
  const isOwn = row.by === facts.actor && restsOnIt.every((mark) => mark.by === facts.actor);
  return isOwn && !isVerified(at, row, restsOnIt)
    ? []
    : [refuse('strike-needs-lead', { signature: id, actor: facts.actor })];
};

/** Verified above it in this cycle; of an earlier cycle the register of signatures still tells. */
const isVerified = ({ car }: Case, row: SignatureRow, restsOnIt: JointRow['marks']): boolean => {
  if (row.act === 'verify-joint') return false;
  if (car.joints[row.subject]?.cycle === row.number)
    return restsOnIt.some((mark) => mark.level === 'verified');
  return Object.values(car.signatures).some(
    ({ act, subject, number, struck }) =>
      act === 'verify-joint' && subject === row.subject && number === row.number && struck === null,
  );
};

/** The standing marks from this signature upwards. */
const above = (joint: JointRow, id: string): JointRow['marks'] => {
  const index = joint.marks.findIndex((mark) => mark.signature === id);
  return index < 0 ? [] : joint.marks.slice(index).filter((mark) => !mark.struck);
};

const undone = (at: Case, id: string, row: SignatureRow, reason: string): readonly CarPayload[] => {
  switch (row.act) {
    case 'snug-joint':
    case 'final-joint':
    case 'verify-joint':
    case 'recheck-joint':
      return jointUndone(at, id, row);
    case 'finish-operation':
      return finishUndone(at, id, row, reason);
    case 'pass-check': {
      const check = at.car.checks[row.subject];
      return check?.signature === id && check.status === 'clear'
        ? [
            {
              type: 'check-due-again',
              check: row.subject,
              round: check.round + 1,
              because: 'its signature was struck',
            },
            ...findingBack(at, row),
          ]
        : [];
    }
    case 'remove-stopgap': {
      const stopgap = at.car.stopgaps[row.subject];
      const quantity = stopgap?.removals[id] ?? 0;
      return quantity === 0 ? [] : [{ type: 'stopgap-returned', id: row.subject, quantity, signature: id }];
    }
    case 'fit-part':
      return at.car.parts[row.subject]?.state === 'fitted' && at.car.parts[row.subject]?.piece === row.number
        ? [{ type: 'part-unfitted', part: row.subject }]
        : [];
    default:
      return [];
  }
};

/** A pass that closed a finding is gone, and the finding must be decided again. */
const findingBack = ({ car }: Case, row: SignatureRow): readonly CarPayload[] =>
  Object.entries(car.findings).flatMap(([finding, each]): readonly CarPayload[] =>
    each.check?.key === row.subject &&
    each.state === 'closed' &&
    each.disposition !== 'misread' &&
    each.change === null
      ? [{ type: 'finding-reopened', finding, because: 'the pass that closed it was struck' }]
      : [],
  );

/** Only in the cycle that it was signed for; an earlier cycle is history already. Its cleared doubts come back. */
const jointUndone = ({ car }: Case, id: string, row: SignatureRow): readonly CarPayload[] => {
  const joint = car.joints[row.subject];
  if (joint === undefined || joint.cycle !== row.number) return [];
  const marks = above(joint, id);
  const recheck = joint.rechecks.find((each) => each.signature === id && !each.struck);
  if (marks.length === 0 && recheck === undefined) return [];
  return [
    {
      type: 'mark-struck',
      joint: row.subject,
      cycle: joint.cycle,
      signatures: [...marks.map((mark) => mark.signature), ...(recheck === undefined ? [] : [id])],
      doubtsBack: [...marks.flatMap((mark) => mark.cleared), ...(recheck?.cleared ?? [])],
    },
  ];
};

/**
 * The run is not over: it comes back paused, since nobody is at it, for whoever goes on; and the conditions that it was
 * the last to set are gone (D22).
 */
const finishUndone = (at: Case, id: string, row: SignatureRow, reason: string): readonly CarPayload[] => {
  const operation = at.car.operations[row.subject];
  if (operation?.finishSignature !== id) return [];
  const because = `the finish of ${row.subject} was struck`;
  return [
    {
      type: 'operation-reopened',
      operation: row.subject,
      run: operation.run,
      leftAs: `finished, and the signature struck: ${reason}`,
    },
    ...Object.entries(at.car.conditions).flatMap(([condition, each]) =>
      each.value && each.run?.operation === row.subject && each.run.run === row.number
        ? conditionCleared(at, condition, because, { operation: row.subject, run: row.number })
        : [],
    ),
  ];
};
