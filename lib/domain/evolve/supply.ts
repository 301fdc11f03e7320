/** Events of the shop's books of buying. */
import type { Shop } from '@/lib/domain/shop/rows';
import type { SupplyPayload } from '@/lib/domain/supply-payload';

export const evolveSupply = (shop: Shop, event: SupplyPayload): Shop => {
  switch (event.type) {
    case 'item-set':
      return { ...shop, items: { ...shop.items, [event.item.id]: event.item } };
    case 'supplier-set':
      return { ...shop, suppliers: { ...shop.suppliers, [event.supplier.id]: event.supplier } };
    case 'offer-set':
      return { ...shop, offers: { ...shop.offers, [event.offer.id]: event.offer } };
    case 'offer-ended': {
      const offer = shop.offers[event.offer];
      return offer === undefined
        ? shop
        : { ...shop, offers: { ...shop.offers, [offer.id]: { ...offer, ended: true } } };
    }
    case 'items-imported':
      return { ...shop, items: { ...shop.items, ...byId(event.items) } };
    case 'offers-imported':
      return { ...shop, offers: { ...shop.offers, ...byId(event.offers) } };
    case 'line-pinned':
    case 'line-unpinned':
      return { ...shop, pins: { ...shop.pins, [event.line.id]: event.line } };
    case 'outside-quoted':
      return { ...shop, quotes: { ...shop.quotes, [event.quote.id]: event.quote } };
  }
};

const byId = <Row extends { readonly id: string }>(rows: readonly Row[]): Readonly<Record<string, Row>> =>
  Object.fromEntries(rows.map((row) => [row.id, row]));
