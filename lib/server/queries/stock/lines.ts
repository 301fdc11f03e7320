/** One place of the stock as lists and pages show it. */
import 'server-only';
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import { addDays } from '@/lib/domain/base/days';
import type { Day, Key } from '@/lib/domain/base/vocabulary';
import type { OffDonor } from '@/lib/domain/car/hardware';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Catalogue } from '@/lib/domain/shop/item';
import { lastGoodDay, lotState } from '@/lib/domain/shop/lot-state';
import { quantityText } from '@/lib/domain/shop/need-words';
import { binOf } from '@/lib/domain/shop/rows';
import type { Lot, Shop } from '@/lib/domain/shop/rows';
import type { Boxed } from '@/lib/domain/shop/shelf';
import { boxedOn } from '@/lib/domain/shop/kit';
import { foundBeyond, onHand, quantityOf, stockText } from '@/lib/domain/shop/stock';
import type { Stock, StockRow } from '@/lib/domain/shop/stock';
import type { Database } from '@/lib/server/database';
import { loadFloor } from '@/lib/server/load/car';
import { catalogueFor } from '@/lib/server/load/catalogue';
import { loadReleased } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { loadStock } from '@/lib/server/load/stock';
import { unitWords } from '@/lib/server/queries/hardware';
import { shopDay } from '@/lib/wire/shop-day';
import type { StockLine, StockState } from '@/lib/wire/views/stock';
import { dayWords, whenWords } from '@/lib/wire/views/when';

/** What every page of the stock reads. */
export interface Shelves {
  readonly shop: Shop;
  readonly stock: Stock;
  readonly catalogue: Catalogue;
  readonly plans: Readonly<Record<string, PlanDocument>>;
  /** What lies in boxes of kits. */
  readonly boxed: readonly Boxed[];
  readonly today: Day;
  readonly day: (day: Day) => string;
  readonly dayOf: (at: string) => string;
  readonly when: (at: string) => string;
}

export const readShelves = async (db: Database, now: string): Promise<Shelves> => {
  const [shop, stock, { zone }, plans, floor] = await Promise.all([
    loadShop(db),
    loadStock(db),
    shopSetting(db),
    loadReleased(db),
    loadFloor(db),
  ]);
  const today = shopDay(zone)(now);
  const day = (each: Day): string => dayWords(each, today);
  return {
    shop,
    stock,
    plans,
    boxed: boxedOn(floor),
    catalogue: catalogueFor(Object.values(plans), shop.items),
    today,
    day,
    dayOf: (at) => day(shopDay(zone)(at)),
    when: whenWords(zone, today),
  };
};

export const itemName = ({ catalogue }: Shelves, item: Key): string => catalogue[item]?.name ?? item;

/** A lot that is used up, or a traced thing whose pieces all name their lot: on its item's page only. */
export const isEmptied = ({ shop, catalogue }: Shelves, row: StockRow): boolean =>
  compare(onHand(row), ZERO) === 0 &&
  compare(foundBeyond(row), ZERO) === 0 &&
  (row.lot === null
    ? catalogue[row.item]?.trace === 'lot'
    : (shop.lots[row.lot]?.quarantined ?? null) === null);

export const lineOf = (shelves: Shelves, row: StockRow): StockLine => {
  const { shop, catalogue, dayOf } = shelves;
  const lot = row.lot === null ? undefined : shop.lots[row.lot];
  const unit = catalogue[row.item]?.unit ?? 'pc';
  const state = stateOf(shelves, row, lot);
  return {
    item: row.item,
    name: itemName(shelves, row.item),
    unit: unitWords(unit),
    lot: row.lot,
    bin: binOf(shop, row.item, row.lot),
    had: quantityText(onHand(row), unit),
    inKits: inKits(shelves, row),
    came:
      lot === undefined
        ? ''
        : `${lot.donor === undefined ? '' : `${offDonorWords(lot.donor)}, `}in ${dayOf(lot.receivedAt)}`,
    isGood: !state.isStop,
    state,
  };
};

/** `off the donor of C54-012, for it alone`. */
export const offDonorWords = ({ car, isShared }: OffDonor): string =>
  `off the donor of ${car}, ${isShared ? 'for any car' : 'for it alone'}`;

/** Empty where none of it lies in a box. */
const inKits = ({ boxed }: Shelves, row: StockRow): string => {
  const sum = boxed.reduce(
    (total, { item, lot, quantity }) =>
      item === row.item && lot === row.lot ? add(total, quantityOf(quantity)) : total,
    ZERO,
  );
  return compare(sum, ZERO) === 0 ? '' : stockText(sum);
};

/** So many days before it runs out somebody should know. */
const SOON = 30;

const stateOf = (shelves: Shelves, row: StockRow, lot: Lot | undefined): StockState => {
  const { catalogue, today, day, dayOf } = shelves;
  const shelf = catalogue[row.item]?.shelf ?? null;
  const unit = catalogue[row.item]?.unit ?? 'pc';
  const isThere = compare(onHand(row), ZERO) > 0;
  const found = foundBeyond(row);
  if (lot?.quarantined !== undefined && lot.quarantined !== null)
    return said('hold', `kept apart: ${lot.quarantined}`, true, true);
  const last = lot === undefined ? null : lastGoodDay(lot, shelf);
  if (lot !== undefined && last !== null && lotState(lot, shelf, today).state === 'expired')
    return said('clock', `ran out on ${day(last)}: it may not be fitted`, isThere, true);
  if (compare(found, ZERO) > 0)
    return said('hint', `${quantityText(found, unit)} more went than the books had: count it`, true, false);
  if (last !== null && isThere && last <= addDays(today, SOON))
    return said('clock', `runs out on ${day(last)}`, true, false);
  if (!isThere) return said('owed', 'none left', false, false);
  if (row.counted !== null) return said('passed', `counted ${dayOf(row.counted.at)}`, false, false);
  return said(
    'passed',
    lot === undefined
      ? 'not counted yet'
      : lot.certificate === null
        ? last === null
          ? 'good'
          : `good to ${day(last)}`
        : `certificate ${lot.certificate}`,
    false,
    false,
  );
};

const said = (sign: StockState['sign'], text: string, wantsLook: boolean, isStop: boolean): StockState => ({
  sign,
  text,
  wantsLook,
  isStop,
});
