/** The plan's names for its keys, so that a sentence can say what `J-110` is. */
import type { NameOf } from '@/lib/domain/base/sentences';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planKey } from '@/lib/domain/plan/positions';

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
