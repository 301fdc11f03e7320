/** What every rule of one car is given, and the two answers it may give. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key, PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import type { LotFacts } from '@/lib/domain/car/hardware';
import type { Car, HoldRow } from '@/lib/domain/car/rows';
import type { CarClaim } from '@/lib/domain/commands';
import type { Signed } from '@/lib/domain/event-meta';
import type { CarPayload } from '@/lib/domain/events';
import type { Facts } from '@/lib/domain/facts';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import { planKey } from '@/lib/domain/plan/positions';
import { isQualified } from '@/lib/domain/shop/rows';

export interface Case {
  /** Id of the command that is judged; empty where nobody claims anything (`assess`). */
  readonly command: string;
  readonly facts: Facts;
  readonly car: Car;
  readonly plan: CompiledPlan;
}

export interface Decision {
  readonly refusals: readonly Refusal[];
  readonly events: readonly CarPayload[];
}

export type CarClaimOf<Type extends CarClaim['type']> = Extract<CarClaim, { readonly type: Type }>;

export const accept = (...events: readonly CarPayload[]): Decision => ({ refusals: [], events });
export const deny = (...refusals: readonly Refusal[]): Decision => ({ refusals, events: [] });

/** Refused with every reason, or accepted with what `events` makes of it. */
export const unless = (refusals: readonly Refusal[], events: () => readonly CarPayload[]): Decision =>
  refusals.length > 0 ? { refusals, events: [] } : { refusals, events: events() };

export const unknown = (what: string, key: string): Decision => deny(refuse('unknown-thing', { what, key }));

export const signature = (act: string, subject: string, number: number): Signed => ({ act, subject, number });

/** What a lot is judged by when it goes into this car. */
export const lotFactsOf = ({ facts, car }: Pick<Case, 'facts' | 'car'>): Omit<LotFacts, 'actorIsLead'> => ({
  lots: facts.lots,
  day: facts.day,
  car: car.id,
});

/** Does the person hold the qualification on the day that counts? */
export const qualification = (
  { facts }: Pick<Case, 'facts'>,
  person: PersonId,
  key: Key | null,
): readonly Refusal[] => {
  const found = facts.people[person];
  if (found === undefined) return [refuse('unknown-person', { person })];
  return key === null || isQualified(found, key, facts.day)
    ? []
    : [refuse('not-qualified', { person, qualification: key, day: facts.day })];
};

/** Options that must be chosen before this element may be touched. */
export const undecided = (
  { plan }: Pick<Case, 'plan'>,
  element: { readonly undecided: readonly Key[] },
): readonly Refusal[] =>
  element.undecided.map((option) =>
    refuse('option-undecided', { option, choices: plan.document.options?.[option]?.choices ?? [] }),
  );

/** Standing holds that stop work on a thing and what goes into it: those on all work, and those that name one of them. */
export const holdsOnWork = (
  at: Pick<Case, 'car'>,
  thing: StateKey,
  parts: readonly Key[] = [],
): readonly Refusal[] =>
  holds(
    at,
    (hold) => hold.scope === 'work' || isNamed(hold, thing) || parts.some((part) => isNamed(hold, part)),
  );

/** Looking is not work: a hold on all work lets checks and second eyes go on, one that names the thing does not. */
export const holdsNaming = (at: Pick<Case, 'car'>, thing: StateKey): readonly Refusal[] =>
  holds(at, (hold) => isNamed(hold, thing));

const isNamed = (hold: HoldRow, thing: StateKey): boolean =>
  hold.scope === 'things' && (hold.things.includes(thing) || hold.things.includes(planKey(thing)));

const holds = ({ car }: Pick<Case, 'car'>, stops: (hold: HoldRow) => boolean): readonly Refusal[] => {
  const found: Refusal[] = [];
  for (const id in car.holds) {
    const hold = car.holds[id];
    if (hold?.releasedBy === null && stops(hold))
      found.push(refuse('hold-stands', { hold: id, scope: hold.scope, reason: hold.reason }));
  }
  return found;
};

/** The next free number of a kind on this car, after `taken` more of this command; numbers are never used again. */
export const nextId = (prefix: string, rows: Readonly<Record<string, unknown>>, taken = 0): string =>
  `${prefix}-${String(Object.keys(rows).filter((id) => id.startsWith(`${prefix}-`)).length + taken + 1)}`;
