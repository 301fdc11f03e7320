/** A car is begun on a released plan revision, with the options that are already known. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Car } from '@/lib/domain/car/rows';
import type { Facts } from '@/lib/domain/facts';
import { unknown, unless } from './case';
import type { CarClaimOf, Decision } from './case';

export const startCar = (
  facts: Facts,
  existing: Car | undefined,
  claim: CarClaimOf<'start-car'>,
): Decision => {
  const document = facts.plans[claim.plan];
  if (document === undefined) return unknown('plan revision', claim.plan);
  const options = claim.options ?? {};
  const refusals: Refusal[] = [];
  if (existing !== undefined) refusals.push(refuse('already-there', { what: 'car', key: claim.car }));
  for (const [option, choice] of Object.entries(options)) {
    const entry = document.options?.[option];
    if (entry === undefined) refusals.push(refuse('unknown-thing', { what: 'option', key: option }));
    else if (!entry.choices.includes(choice))
      refusals.push(refuse('choice-unknown', { option, choice, choices: entry.choices }));
  }
  // The first stage has no gate before it: a full room is seen on the board and refuses nothing here.
  return unless(refusals, () => [
    { type: 'car-started', chassis: claim.chassis, colour: claim.colour ?? null, plan: claim.plan, options },
  ]);
};
