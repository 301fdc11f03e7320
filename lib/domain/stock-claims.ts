/**
 * What a person may claim of stock. Quantities are decimal text, in the item's own unit; a lot is named where it is traced. A
 * whole list is one act: all of it is taken, or none.
 */
import type { CarId, Key, LotId } from './base/vocabulary';
import type { OutReason } from './shop/stock';

export interface OfStock {
  readonly item: Key;
  readonly lot?: LotId;
}

export interface BulkIn {
  readonly item: Key;
  readonly quantity: string;
}

export type Counted = OfStock & { readonly counted: string };
export type PutAway = OfStock & { readonly bin: string };

export type StockClaim =
  /** Bulk goods came in; a lot is received by itself. */
  | { readonly type: 'receive-stock'; readonly goods: readonly BulkIn[] }
  | { readonly type: 'count-stock'; readonly counts: readonly Counted[] }
  | (OfStock & {
      readonly type: 'draw-stock';
      readonly quantity: string;
      readonly reason: OutReason;
      readonly forCar?: CarId;
    })
  | (OfStock & { readonly type: 'put-back'; readonly quantity: string })
  | { readonly type: 'put-away'; readonly places: readonly PutAway[] }
  /** All that lies in the rack of an item, each with its unit; none = the rack is empty of it. */
  | { readonly type: 'count-remnants'; readonly item: Key; readonly lengths: readonly string[] };
