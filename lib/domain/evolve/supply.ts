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
    case 'order-approved':
      return { ...shop, orders: { ...shop.orders, ...byId(event.orders) } };
    case 'order-cancelled': {
      const order = shop.orders[event.order];
      return order === undefined
        ? shop
        : { ...shop, orders: { ...shop.orders, [order.id]: { ...order, cancelled: event.reason } } };
    }
  }
};

const byId = <Row extends { readonly id: string }>(rows: readonly Row[]): Readonly<Record<string, Row>> =>
  Object.fromEntries(rows.map((row) => [row.id, row]));
