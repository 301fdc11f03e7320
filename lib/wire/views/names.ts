/** The plan's names for its keys, so that a sentence can say what `J-110` is. */
import type { NameOf } from '@/lib/domain/base/sentences';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planKey } from '@/lib/domain/plan/positions';
import { nameAt } from '@/lib/domain/shop/rows';

const kept = new WeakMap<PlanDocument, NameOf>();

/** From the plan alone. */
export const namesOf = (document: PlanDocument): NameOf => {
  const before = kept.get(document);
  if (before !== undefined) return before;
  const names = new Map<string, string>(Object.entries(document.conditions ?? {}));
  const { options, stages, operations, joints, checks, stopgaps, parts, items } = document;
  for (const section of [options, stages, operations, joints, checks, stopgaps, parts, items])
    for (const [key, { name }] of Object.entries<{ readonly name: string }>(section ?? {}))
      names.set(key, name);
  const nameOf: NameOf = (key) => names.get(planKey(key)) ?? null;
  kept.set(document, nameOf);
  return nameOf;
};

/** The same with the shop's people: a plan's own key comes first. */
export const withPeople =
  (inPlan: NameOf, people: Readonly<Record<string, { readonly name: string }>>): NameOf =>
  (key) =>
    inPlan(key) ?? people[key]?.name ?? null;

/** What somebody is called, or was called at that moment: what is past keeps the name that it was done under. */
export const nameOfPerson = (people: Facts['people'], id: PersonId, at?: Instant): string => {
  const person = people[id];
  if (person === undefined) return id;
  return at === undefined ? person.name : nameAt(person, at);
};
