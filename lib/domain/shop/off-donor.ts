/** What of a donor's hardware may be used again. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { ruleText } from '@/lib/domain/car/hardware';
import type { ItemEntry, PlanDocument } from '@/lib/domain/plan/document';
import { isForUsed, reuseOf } from '@/lib/domain/plan/reuse';

type Named = Pick<ItemEntry, 'unit' | 'reuse'>;

/**
 * Why a used one is never good again in this plan; null where it may be. The plan's word for the item goes before the shop's
 * `own`. What is measured out or consumed went into the work that used it.
 */
export const newOnly = (
  { items, operations }: Pick<PlanDocument, 'items' | 'operations'>,
  item: Key,
  own: Named | null = null,
): string | null => {
  const entry: Named = items?.[item] ?? own ?? {};
  const isConsumed = Object.values(operations ?? {}).some(
    ({ consumables }) => consumables?.[item] !== undefined,
  );
  if (isConsumed || (entry.unit ?? 'pc') !== 'pc') return 'used up by the work';
  const reuse = reuseOf({ [item]: entry }, item);
  return isForUsed(reuse) ? null : ruleText(reuse);
};
