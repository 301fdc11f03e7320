/** What the shop knows of buying, as rows: terms of items, suppliers, their offers, and what was insisted on for an order. */
import type { Day, Key } from '@/lib/domain/base/vocabulary';
import type { Freight, PriceStep } from './order';
import type { OutsideQuotes } from './outside-quotes';
import type { PurchaseOrder } from './purchase-rows';
import type { TripRow } from './trip-rows';

/** What a plan says of its items, for one that is the shop's own. */
export interface OwnWords {
  readonly name: string;
  readonly unit: string;
  readonly reuse: string;
  readonly trace: 'lot' | 'bulk';
}

export interface ItemRow {
  readonly id: Key;
  /** Null: a plan has it, and the plan's words stand. */
  readonly own: OwnWords | null;
  readonly shelf: { readonly months: number | null; readonly openedDays: number | null } | null;
  readonly comesWith: Readonly<Record<Key, number>>;
  /** Decimal text, in the item's unit. */
  readonly minimum: string;
  /** Decimal text, percent of what is used. */
  readonly attrition: string;
  /** The part of a plan that this is when it is bought. */
  readonly isPart: Key | null;
}

export interface SupplierRow {
  readonly id: string;
  readonly name: string;
  /** 1 Monday … 7 Sunday. */
  readonly orderDays: readonly number[];
  /** Days from order to arrival. */
  readonly lead: number;
  readonly takesToday: boolean;
  /** Money is in its smallest unit everywhere. */
  readonly minimumValue: number;
  readonly freight: Freight;
  /** Where an order is sent; null = it is printed. */
  readonly mail: string | null;
}

export interface OfferRow {
  readonly id: string;
  readonly supplier: string;
  readonly item: Key;
  /** Decimal text, in the item's unit. */
  readonly packSize: string;
  readonly steps: readonly PriceStep[];
  /** Grams of one pack. */
  readonly weight: number;
  /** What the supplier calls it. */
  readonly number: string | null;
  /** Paid on each pack until the old part is handed in: no price. Absent = none. */
  readonly deposit?: number;
  readonly ended: boolean;
}

/** What a lead or the owner insists on for an item, whatever is cheapest. */
export interface PinRow {
  readonly id: Key;
  /** Null: taken back. */
  readonly pin: ItemPin | null;
  readonly since: Day;
}

export interface ItemPin {
  readonly supplier: string | null;
  /** Decimal text, in the item's unit; null = as many as are needed. */
  readonly quantity: string | null;
  readonly buyToday: boolean;
  readonly isExcluded: boolean;
}

export interface SupplyRows {
  readonly items: Readonly<Record<Key, ItemRow>>;
  readonly suppliers: Readonly<Record<string, SupplierRow>>;
  readonly offers: Readonly<Record<string, OfferRow>>;
  readonly pins: Readonly<Record<Key, PinRow>>;
  /** Approved, by number. */
  readonly orders: Readonly<Record<string, PurchaseOrder>>;
  /** To who does outside work, by number. */
  readonly trips: Readonly<Record<string, TripRow>>;
  readonly quotes: OutsideQuotes;
}

export const NO_SUPPLY: SupplyRows = {
  items: {},
  suppliers: {},
  offers: {},
  pins: {},
  orders: {},
  trips: {},
  quotes: {},
};

/** One pack of one item from one supplier is one offer: to say it again is to change it. */
export const offerId = (supplier: string, item: Key, packSize: string): string =>
  `${supplier}/${item}/${packSize}`;
