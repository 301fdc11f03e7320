/** What happened to the books of buying, in a few words each. */
import type { PurchasePayload } from '@/lib/domain/purchase-payload';
import type { SupplyPayload } from '@/lib/domain/supply-payload';
import type { TripPayload } from '@/lib/domain/trip-payload';

export const supplyWords = (event: SupplyPayload | PurchasePayload | TripPayload): string => {
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
    case 'outside-quoted':
      return `${event.quote.key} of ${event.quote.plan} has its price at another firm`;
    case 'order-approved':
      return `order ${event.order.id} to ${event.order.supplier} is sent: ${String(event.order.lines.length)} lines`;
    case 'order-received':
      return `goods of order ${event.order} came from ${event.supplier}`;
    case 'order-promised':
      return `order ${event.order} is promised for ${event.due}; it was ${event.was}`;
    case 'order-line-ended':
      return `${event.quantity} of ${event.item} will not come with order ${event.order}: ${event.why}`;
    case 'order-credited':
      return `money of order ${event.order} comes back: ${event.why}`;
    case 'trip-opened':
      return `trip ${event.trip} goes to ${event.supplier} on ${event.goes}, back ${event.due}`;
    case 'trip-promised':
      return `trip ${event.trip} is promised back for ${event.due}; it was ${event.was}`;
    case 'trip-billed':
      return `${event.supplier} has billed trip ${event.trip}`;
  }
};
