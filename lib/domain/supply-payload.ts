/** What happened to the shop's books of buying. */
import type { Key } from './base/vocabulary';
import type { OutsideQuote } from './shop/outside-quotes';
import type { ItemRow, OfferRow, PinRow, SupplierRow } from './shop/offer-rows';

export type SupplyPayload =
  | { readonly type: 'item-set'; readonly item: ItemRow }
  | { readonly type: 'supplier-set'; readonly supplier: SupplierRow }
  | { readonly type: 'offer-set'; readonly offer: OfferRow }
  | { readonly type: 'offer-ended'; readonly offer: string; readonly item: Key; readonly supplier: string }
  /** Only those that were new or different. */
  | { readonly type: 'items-imported'; readonly items: readonly ItemRow[] }
  | { readonly type: 'offers-imported'; readonly offers: readonly OfferRow[] }
  | { readonly type: 'line-pinned'; readonly line: PinRow }
  | { readonly type: 'line-unpinned'; readonly line: PinRow }
  | { readonly type: 'outside-quoted'; readonly quote: OutsideQuote };
