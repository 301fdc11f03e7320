/** Names for keys, so that a sentence can say what `J-110` is. */
import type { NameOf } from '@/lib/domain/base/sentences';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { planKey } from '@/lib/domain/plan/positions';

/** From the plan alone; people and tools are called by their ids, as in the lines. */
export const namesIn = (document: PlanDocument): NameOf => {
  const names = new Map<string, string>(Object.entries(document.conditions ?? {}));
  const { options, stages, operations, joints, checks, stopgaps, parts, items } = document;
  const sections: readonly (Readonly<Record<string, { readonly name: string }>> | undefined)[] = [
    options,
    stages,
    operations,
    joints,
    checks,
    stopgaps,
    parts,
    items,
  ];
  for (const section of sections)
    for (const [key, { name }] of Object.entries(section ?? {})) names.set(key, name);
  return (key) => names.get(planKey(key)) ?? null;
};
