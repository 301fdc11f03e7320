/** What kits are told with: one read of the stock for a page, whatever number of kits stand on it. */
import 'server-only';
import { ZERO, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Day, Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Job } from '@/lib/domain/assess';
import { isCounted } from '@/lib/domain/shop/item';
import type { Catalogue } from '@/lib/domain/shop/item';
import { boxedOn } from '@/lib/domain/shop/kit';
import { comesOn, jointWants, kitWants, lackOf } from '@/lib/domain/shop/kit-need';
import type { KitWant } from '@/lib/domain/shop/kit-need';
import { carNeed } from '@/lib/domain/shop/need';
import type { CarNeed } from '@/lib/domain/shop/need';
import { quantityText } from '@/lib/domain/shop/need-words';
import { onOrder } from '@/lib/domain/shop/purchase-rows';
import type { Shop } from '@/lib/domain/shop/rows';
import { reachFor, shelfOf } from '@/lib/domain/shop/shelf';
import type { OnShelf, Reach } from '@/lib/domain/shop/shelf';
import type { Supply } from '@/lib/domain/shop/supply';
import type { Database } from '@/lib/server/database';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadReleased } from '@/lib/server/load/plan';
import { loadStock } from '@/lib/server/load/stock';
import { weekdayWords } from '@/lib/wire/views/when';

export interface Supplies {
  readonly shop: Shop;
  readonly catalogue: Catalogue;
  readonly shelf: readonly OnShelf[];
  readonly coming: readonly Supply[];
  readonly today: Day;
}

/** `floor`: every car that has not left, since what lies in its boxes is on nobody else's shelf. */
export const loadSupplies = async (
  db: Database,
  shop: Shop,
  floor: readonly Car[],
  today: Day,
): Promise<Supplies> => {
  const [stock, released] = await Promise.all([loadStock(db), loadReleased(db)]);
  const catalogue = catalogueFor(Object.values(released), shop.items);
  return {
    shop,
    catalogue,
    shelf: shelfOf(shop, stock, catalogue, today, boxedOn(floor)),
    coming: onOrder(shop.orders),
    today,
  };
};

export interface KitLineNow extends KitWant {
  readonly reach: Reach;
  /** What neither the box nor the shelf has. */
  readonly lack: Exact;
}

/** A kit against what the shelf has for this car. */
export const kitNow = (
  supplies: Supplies,
  plan: CompiledPlan,
  car: Car,
  operation: StateKey,
): readonly KitLineNow[] =>
  againstShelf(supplies, car, kitWants(needOf(supplies, plan, car), car, operation));

/** What goes into a job, against the shelf: the kit of work, or what a joint takes anew. All other jobs take nothing. */
export const partsNow = (
  supplies: Supplies,
  plan: CompiledPlan,
  car: Car,
  { kind, key }: Pick<Job, 'kind' | 'key'>,
): readonly KitLineNow[] => {
  if (kind === 'operation') return kitNow(supplies, plan, car, key);
  return kind === 'renew' || kind === 'restore'
    ? againstShelf(supplies, car, jointWants(needOf(supplies, plan, car), key))
    : [];
};

const needOf = ({ shop, catalogue }: Supplies, plan: CompiledPlan, car: Car): CarNeed =>
  carNeed(plan, car, shop, catalogue);

const againstShelf = (
  { shop, shelf }: Supplies,
  car: Car,
  wants: readonly KitWant[],
): readonly KitLineNow[] =>
  wants.map((want) => {
    const reach = reachFor(shop, shelf, want.item, car.id);
    return { ...want, reach, lack: lackOf(want, reach.good) };
  });

export const itemWords = ({ catalogue }: Supplies, plan: CompiledPlan, item: Key): string =>
  catalogue[item]?.name ?? plan.document.items?.[item]?.name ?? item;

export const unitOf = ({ catalogue }: Supplies, item: Key): string => catalogue[item]?.unit ?? 'pc';

/** `on order, due Mon 30 Nov`, `was due Mon 23 Nov`, `none on order`. */
export const comingWords = ({ coming, today }: Supplies, item: Key): string => {
  const day = comesOn(coming, item);
  if (day === null) return 'none on order';
  return `${day < today ? 'on order, was due' : 'on order, due'} ${weekdayWords(day, today)}`;
};

/** `2 × bolt M8 × 30 (none on order)`: what is missing and when it comes; empty where nothing is. */
export const missingWords = (supplies: Supplies, plan: CompiledPlan, lines: readonly KitLineNow[]): string =>
  lines
    .filter(({ lack }) => compare(lack, ZERO) > 0)
    .map(
      ({ item, lack }) =>
        `${amountWords(lack, unitOf(supplies, item))} ${itemWords(supplies, plan, item)} (${comingWords(supplies, item)})`,
    )
    .join('; ');

/** `Ready but for parts: 2 × bolt M8 × 30 (none on order)`; empty where nothing is missing (D59). The same words on every page. */
export const lacksWords = (
  supplies: Supplies,
  plan: CompiledPlan,
  lines: readonly KitLineNow[],
  state: Job['state'],
): string => {
  const missing = missingWords(supplies, plan, lines);
  if (missing === '') return '';
  return state === 'ready' ? `Ready but for parts: ${missing}` : `Short of parts: ${missing}`;
};

/** `2 ×`, `4.4 m`. */
const amountWords = (quantity: Exact, unit: string): string =>
  isCounted(unit) ? `${quantityText(quantity, unit)} ×` : quantityText(quantity, unit);
