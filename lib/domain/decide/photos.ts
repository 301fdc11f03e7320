/**
 * Photographs: named by the fingerprint of what the camera gave. They prove nothing by themselves; they stand with what
 * was claimed when they were taken. One that the shop does not hold, or holds of another car, names nothing.
 */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { CarClaim } from '@/lib/domain/commands';
import type { CarPayload } from '@/lib/domain/events';
import { deny, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';

/** One that the plan asks for, or that somebody adds to a thing of the car. */
export const addPhoto = (at: Case, { of, slot, hash }: CarClaimOf<'add-photo'>): Decision =>
  unless(unheld(at, [hash]), () => [added(at, { of, slot }, hash)]);

/** What was decided, and the photographs that were taken with it. */
export const withPhotos = (at: Case, claim: CarClaim, decision: Decision): Decision => {
  const photos = [...new Set('photos' in claim ? (claim.photos ?? []) : [])];
  if (photos.length === 0) return decision;
  const refusals = [...decision.refusals, ...unheld(at, photos)];
  if (refusals.length > 0) return deny(...refusals);
  const shown = shownBy(at, claim, decision.events);
  return shown === null
    ? decision
    : {
        refusals: [],
        events: [...decision.events, ...photos.map((hash) => added(at, shown, hash))],
      };
};

const unheld = ({ facts, car }: Case, photos: readonly string[]): readonly Refusal[] =>
  photos
    .filter((hash) => facts.photos !== null && facts.photos[hash]?.car !== car.id)
    .map((hash) => refuse('unknown-thing', { what: 'photograph', key: hash }));

interface Shown {
  readonly of: string;
  readonly slot: string;
}

const added = ({ facts }: Case, { of, slot }: Shown, hash: string): CarPayload => {
  const held = facts.photos?.[hash];
  return { type: 'photo-added', of, slot, hash, ...(held === undefined ? {} : { copy: held.copy }) };
};

/** The thing that they show, and how it was then. */
const shownBy = (at: Case, claim: CarClaim, events: readonly CarPayload[]): Shown | null => {
  switch (claim.type) {
    case 'report-finding':
      return ofFinding(events, 'as found');
    case 'reject-joint':
      return ofFinding(events, 'as rejected');
    case 'report-disturbed':
      return ofFinding(events, claim.cause === 'moved' ? 'as it moved' : 'as the stripe was');
    case 'snug-joint':
      return ofJoint(at, claim.joint, 'as run up');
    case 'final-joint':
      return ofJoint(at, claim.joint, 'as torqued');
    case 'verify-joint':
      return ofJoint(at, claim.joint, 'as verified');
    case 'recheck-joint':
      return ofJoint(at, claim.joint, 'as tried again');
    case 'pass-check':
      return events.some((event) => event.type === 'check-failed')
        ? { of: claim.check, slot: 'as it failed' }
        : { of: claim.check, slot: 'as it passed' };
    case 'fail-check':
      return { of: claim.check, slot: 'as it failed' };
    case 'pause-operation':
      return { of: claim.operation, slot: 'as it was left' };
    case 'finish-operation':
      return { of: claim.operation, slot: 'as finished' };
    case 'grade-parts': {
      const [only, ...more] = claim.parts;
      return only === undefined || more.length > 0 ? null : { of: only.part, slot: 'off the donor' };
    }
    case 'add-note':
      return { of: claim.of, slot: 'with a remark' };
    default:
      return null;
  }
};

/** Bad news is settled where its finding is, so that its photographs stand there. */
const ofFinding = (events: readonly CarPayload[], slot: string): Shown | null => {
  const opened = events.find((event) => event.type === 'finding-opened');
  return opened === undefined ? null : { of: opened.finding, slot };
};

/** One of an earlier cycle shows what is no longer so: the cycle is said with it. */
const ofJoint = ({ car }: Case, joint: StateKey, slot: string): Shown => {
  const cycle = car.joints[joint]?.cycle ?? 1;
  return { of: joint, slot: cycle === 1 ? slot : `${slot}, cycle ${String(cycle)}` };
};
