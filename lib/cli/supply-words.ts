/** What happened to the books of buying, in a few words each. */
import type { SupplyPayload } from '@/lib/domain/supply-payload';

export const supplyWords = (event: SupplyPayload): string => {
  switch (event.type) {
    case 'item-set':
      return `${event.item.id} has terms of the shop’s own`;
    case 'supplier-set':
      return `${event.supplier.name} sells to the shop`;
    case 'offer-set':
      return `${event.offer.id} is offered`;
    case 'offer-ended':
      return `${event.offer} is offered no longer`;
    case 'items-imported':
      return `${String(event.items.length)} items came from a file`;
    case 'offers-imported':
      return `${String(event.offers.length)} offers came from a file`;
    case 'line-pinned':
      return `${event.line.id} is ordered as was insisted on`;
    case 'line-unpinned':
      return `${event.line.id} is ordered as is cheapest`;
    case 'order-approved':
      return `${event.orders.map(({ id }) => id).join(', ')} ordered`;
    case 'order-cancelled':
      return `${event.order} is cancelled: ${event.reason}`;
  }
};
