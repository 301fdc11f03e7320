/** What goes in, where it lies, and what of it the shelf lacks (D59). */
import { ZERO, add, compare, exact } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import { levelOf } from '@/lib/domain/car/joint';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { parseQuantity } from '@/lib/domain/shop/item';
import { quantityText } from '@/lib/domain/shop/need-words';
import type { Reach } from '@/lib/domain/shop/shelf';
import { hardwareViews } from '@/lib/server/queries/sign-off/hardware-view';
import type { Seen } from '@/lib/server/queries/car/seen';
import type { KitLine } from '@/lib/wire/views/my-work';
import type { HardwareView } from '@/lib/wire/views/sign-off';
import type { JobJoint } from './job-things';

/** Where an item lies, how much of it is good for anybody, and how much is in the job's own box. */
export type ReachOf = (item: Key) => Reach & { readonly picked: Exact };

/** Like hardware of several joints is one line; what the plan uses up besides stands under it. */
export const kitLines = (
  seen: Seen,
  joints: Iterable<JobJoint>,
  operation: CompiledOperation | undefined,
  reach: ReachOf,
): readonly KitLine[] => {
  const found = new Map<string, { view: HardwareView; quantity: number; fitted: number; places: number }>();
  for (const { at } of joints)
    for (const view of hardwareViews(at, seen.spoken)) {
      const isFitted = levelOf(at.row) !== 'open';
      const before = found.get(view.item) ?? { view, quantity: 0, fitted: 0, places: 0 };
      const places = view.places.filter(({ state }) => isFitted && state === 'in').length;
      found.set(view.item, {
        view,
        quantity: before.quantity + view.quantity,
        fitted: before.fitted + places,
        places: before.places + view.places.length,
      });
    }
  const hardware = [...found.values()].map(({ view, quantity, fitted, places }): KitLine => ({
    item: view.item,
    name: view.name,
    quantity: String(quantity),
    rule: view.rule,
    isOnce: view.isOnce,
    fitted: fitted === 0 ? '' : fitted === places ? 'fitted already' : 'some of it fitted already',
    ...lying(reach(view.item), fitted === 0 ? exact(quantity) : null, seen, view.item),
  }));
  const entry = seen.plan.document.operations?.[operation?.key ?? ''];
  const more = [...Object.entries(entry?.hardware ?? {}), ...Object.entries(entry?.consumables ?? {})];
  const isDone = operation !== undefined && seen.car.operations[operation.stateKey]?.status === 'finished';
  return [
    ...hardware,
    ...more
      .filter(([item]) => !found.has(item))
      .map(([item, given]): KitLine => {
        const quantity = typeof given === 'object' ? given.quantity : given;
        return {
          item,
          name: seen.plan.document.items?.[item]?.name ?? item,
          quantity: String(quantity),
          rule: '',
          isOnce: false,
          fitted: '',
          ...lying(reach(item), isDone ? null : parseQuantity(quantity), seen, item),
        };
      }),
  ];
};

/** `wanted`: what must still come off the shelf; null = nothing, or nobody can say. */
const lying = (
  { bin, lot, good, picked }: ReturnType<ReachOf>,
  wanted: Exact | null,
  { plan }: Seen,
  item: Key,
): Pick<KitLine, 'bin' | 'lot' | 'picked' | 'lacks'> => {
  const isThere = wanted === null || compare(add(good, picked), wanted) >= 0;
  const unit = plan.document.items?.[item]?.unit ?? 'pc';
  return {
    bin,
    lot: isThere ? lot : null,
    picked: compare(picked, ZERO) === 0 ? '' : `${quantityText(picked, unit)} in the kit`,
    lacks: isThere
      ? ''
      : compare(good, ZERO) === 0
        ? 'none on the shelf'
        : `only ${quantityText(good, unit)} on the shelf`,
  };
};
