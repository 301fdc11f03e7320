/** The plainest claim of each type about a thing: what the rules are asked with, who would be refused it. */
import { lastOuting } from '@/lib/domain/car/component-rows';
import type { CarClaim } from '@/lib/domain/commands';
import type { CarClaimType } from '@/lib/wire/views/desk';
import type { Seen } from './seen';

export const sampleClaim = (seen: Seen, type: CarClaimType, key: string): CarClaim => {
  const car = seen.car.id;
  switch (type) {
    case 'start-car':
      return { type, car, plan: seen.car.plan, chassis: key };
    case 'choose-option':
      return { type, car, option: key, choice: seen.plan.document.options?.[key]?.choices[0] ?? '' };
    case 'assign':
      return { type, car, job: key };
    case 'add-note':
      return { type, car, of: key, text: '' };
    case 'add-photo':
      return { type, car, of: key, slot: '', hash: '' };
    case 'start-operation':
    case 'join-operation':
    case 'pause-operation':
    case 'leave-operation':
    case 'resume-operation':
    case 'take-over-operation':
    case 'finish-operation':
      return { type, car, operation: key };
    case 'snug-joint':
    case 'final-joint':
    case 'recheck-joint':
    case 'open-joint':
      return { type, car, joint: key };
    case 'verify-joint':
      return { type, car, joint: key, method: seen.plan.joints.get(key)?.verify ?? 'seen' };
    case 'reject-joint':
      return { type, car, joint: key, reason: '' };
    case 'report-disturbed':
      return { type, car, joint: key, cause: 'stripe-broken' };
    case 'report-over-torque':
      return { type, car, joint: key, fastener: 1, reading: '', unit: 'N·m' };
    case 'begin-check':
    case 'pass-check':
      return { type, car, check: key };
    case 'fail-check':
      return { type, car, check: key, reason: '' };
    case 'place-stopgap':
      return { type, car };
    case 'remove-stopgap':
      return { type, car, stopgap: key };
    case 'set-condition':
    case 'clear-condition':
      return { type, car, condition: key, reason: '' };
    case 'receive-part':
    case 'fit-part':
      return { type, car, part: key };
    case 'take-part':
      return { type, car, part: key, reason: '' };
    case 'report-finding':
      return { type, car, about: { kind: 'place', key: '' }, text: '' };
    case 'decide-finding':
      return { type, car, finding: key, disposition: 'rework', reason: '' };
    case 'close-finding':
      return { type, car, finding: key };
    case 'ask-change':
      return { type, car, wait: key, reason: '' };
    case 'decide-change':
      return { type, car, change: key, approve: true };
    case 'place-hold':
      return { type, car, scope: 'gate', reason: '' };
    case 'release-hold':
      return { type, car, hold: key };
    case 'strike-signature':
      return { type, car, signature: key, reason: '' };
    case 'advance-car':
      return { type, car, to: key };
    case 'send-back':
      return { type, car, to: key, reason: '' };
    case 'deliver-car':
      return { type, car };
    case 'pick-kit':
      return { type, car, operation: key, lines: [] };
    case 'empty-kit':
      return { type, car, operation: key };
    case 'report-kit-line':
      return { type, car, operation: key, item: '', what: 'wrong' };
    case 'record-donor':
      return { type, car };
    case 'grade-parts':
      return { type, car, parts: [{ part: key }] };
    case 'send-parts':
      return { type, car, trip: '', parts: [{ part: key, work: '' }] };
    case 'return-parts':
      return {
        type,
        car,
        trip: lastOuting(seen.car.components[key])?.trip ?? '',
        parts: [{ part: key, how: 'done' }],
      };
  }
};
