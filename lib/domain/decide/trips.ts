/** Trips to who does outside work: when they go, when they are promised back, what they cost. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { TripClaim } from '@/lib/domain/trip-claims';
import { accepted, denied } from './shop-decision';
import type { ShopDecision } from './shop-decision';

export const decideTrip = (facts: Facts, claim: TripClaim): ShopDecision => {
  const { trips, suppliers } = facts.supply;
  const trip = trips[claim.trip];
  if (claim.type === 'open-trip') {
    const { supplier, goes, due } = claim;
    if (suppliers[supplier] === undefined)
      return denied([refuse('unknown-thing', { what: 'supplier', key: supplier })]);
    if (trip !== undefined) return denied([refuse('already-there', { what: 'trip', key: claim.trip })]);
    const early = backBefore(claim.trip, goes, due);
    return early.length > 0
      ? denied(early)
      : accepted({ type: 'trip-opened', trip: claim.trip, supplier, goes, due });
  }
  if (trip === undefined) return denied([refuse('unknown-thing', { what: 'trip', key: claim.trip })]);
  const of = { trip: trip.id, supplier: trip.supplier };
  if (claim.type === 'promise-trip') {
    const early = backBefore(trip.id, trip.goes, claim.due);
    if (early.length > 0) return denied(early);
    return claim.due === trip.due
      ? accepted()
      : accepted({ type: 'trip-promised', ...of, due: claim.due, was: trip.due });
  }
  const { lines, freight = 0, note } = claim;
  const twice = lines.find(
    ({ car, part }, index) => lines.findIndex((each) => each.car === car && each.part === part) !== index,
  );
  return twice === undefined
    ? accepted({ type: 'trip-billed', ...of, lines, freight, note: note ?? null })
    : denied([refuse('given-before', { what: 'part', key: `${twice.part} of ${twice.car}` })]);
};

const backBefore = (trip: string, goes: Day, due: Day): readonly Refusal[] =>
  due < goes ? [refuse('back-before-gone', { trip, goes, due })] : [];
