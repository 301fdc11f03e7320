/** What a person may claim of stock. Quantities are decimal text, in the item's own unit; a lot names itself where it is traced. */
import type { CarId, Key, LotId } from './base/vocabulary';
import type { OutReason } from './shop/stock';

interface OfStock {
  readonly item: Key;
  readonly lot?: LotId;
}

export type StockClaim =
  /** Bulk goods came in; a lot is received by itself. */
  | { readonly type: 'receive-stock'; readonly item: Key; readonly quantity: string }
  | (OfStock & { readonly type: 'count-stock'; readonly counted: string })
  | (OfStock & {
      readonly type: 'draw-stock';
      readonly quantity: string;
      readonly reason: OutReason;
      readonly forCar?: CarId;
    })
  | (OfStock & { readonly type: 'put-back'; readonly quantity: string })
  | (OfStock & { readonly type: 'put-away'; readonly bin: string });

/** What the books say of the place that is claimed about is asked for these. */
export const ASKS_STOCK: ReadonlySet<string> = new Set<StockClaim['type']>([
  'receive-stock',
  'count-stock',
  'draw-stock',
  'put-back',
]);
