/** What a person may claim about buying: terms of items, suppliers, offers, quotes, and what is insisted on for an order. */
import type { Key } from './base/vocabulary';
import type { Freight, PriceStep } from './shop/order';

/** All that the shop says of an item; what is left out is said to be nothing. */
export interface ItemTermsClaim {
  readonly item: Key;
  /** A size as typed, `3/8-16 x 2 1/2 gr 5`: must be readable. Only for an item that no plan has, as all up to `trace`. */
  readonly size?: string;
  /** What it is called where it has no size. */
  readonly name?: string;
  readonly unit?: string;
  readonly reuse?: string;
  readonly trace?: 'lot' | 'bulk';
  readonly shelfMonths?: number;
  readonly openedDays?: number;
  readonly comesWith?: Readonly<Record<Key, number>>;
  readonly minimum?: string;
  /** Percent. */
  readonly attrition?: string;
  readonly isPart?: Key;
}

export interface OfferClaim {
  readonly supplier: string;
  readonly item: Key;
  readonly pack: string;
  readonly prices: readonly PriceStep[];
  readonly weight?: number;
  readonly number?: string;
  /** Comes back for the old part. */
  readonly deposit?: number;
}

/** Rows of a file are called by their number there. */
interface FromFile {
  readonly firstRow?: number;
}

export type SupplyClaim =
  | ({ readonly type: 'set-item' } & ItemTermsClaim)
  | {
      readonly type: 'set-supplier';
      readonly supplier: string;
      readonly name: string;
      readonly orderDays: readonly number[];
      readonly lead: number;
      readonly takesToday?: boolean;
      readonly minimumValue?: number;
      readonly freight?: Freight;
      readonly mail?: string;
    }
  | ({ readonly type: 'set-offer' } & OfferClaim)
  | { readonly type: 'end-offer'; readonly offer: string }
  | (FromFile & { readonly type: 'import-items'; readonly items: readonly ItemTermsClaim[] })
  | (FromFile & { readonly type: 'import-offers'; readonly offers: readonly OfferClaim[] })
  | {
      readonly type: 'pin-line';
      readonly item: Key;
      readonly supplier?: string;
      readonly quantity?: string;
      readonly buyToday?: boolean;
      readonly exclude?: boolean;
    }
  | { readonly type: 'unpin-line'; readonly item: Key }
  /** `plan` is the name of a plan, `key` a part or a piece of work that it sends to another firm. */
  | { readonly type: 'quote-outside'; readonly plan: string; readonly key: Key; readonly money: number };

const SUPPLY: ReadonlySet<string> = new Set<SupplyClaim['type']>([
  'set-item',
  'set-supplier',
  'set-offer',
  'end-offer',
  'import-items',
  'import-offers',
  'pin-line',
  'unpin-line',
  'quote-outside',
]);

/** Those that name items: whoever judges them must know the released plans. */
export const isSupplyClaim = <Claim extends { readonly type: string }>(
  claim: Claim,
): claim is Claim & SupplyClaim => SUPPLY.has(claim.type);
