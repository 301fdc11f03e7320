/** What happened to the books of buying, in the shop's words. Everybody reads the log, so that no price stands here. */
import type { PurchasePayload } from '@/lib/domain/purchase-payload';
import { END_WORDS } from '@/lib/domain/shop/stock-words';
import type { SupplyPayload } from '@/lib/domain/supply-payload';
import type { TripPayload } from '@/lib/domain/trip-payload';
import type { EventLine } from './log';

export const supplyLine = (
  event: SupplyPayload | PurchasePayload | TripPayload,
  supplier: (id: string) => string,
): EventLine => {
  switch (event.type) {
    case 'item-set':
      return line('hint', event.item.own?.name ?? event.item.id, 'has terms of the shop’s own');
    case 'supplier-set':
      return line('add', event.supplier.name, 'sells to the shop, on these terms');
    case 'offer-set':
      return line(
        'hint',
        event.offer.item,
        `is offered by ${supplier(event.offer.supplier)} in packs of ${event.offer.packSize}`,
      );
    case 'offer-ended':
      return line('gclosed', event.item, `is no longer offered so by ${supplier(event.supplier)}`);
    case 'items-imported':
      return line('add', counted(event.items.length, 'item'), 'from a file');
    case 'offers-imported':
      return line('add', counted(event.offers.length, 'offer'), 'from a file');
    case 'line-pinned':
      return line('hint', event.line.id, 'is ordered as was insisted on, whatever is cheapest');
    case 'line-unpinned':
      return line('hint', event.line.id, 'is ordered as is cheapest again');
    case 'outside-quoted':
      return line('hint', event.quote.key, `of ${event.quote.plan} has its price at another firm`);
    case 'order-approved':
      return line(
        'passed',
        `Order ${event.order.id}`,
        `is approved and sent to ${supplier(event.order.supplier)}`,
      );
    case 'order-received':
      return line(
        'add',
        `Order ${event.order}`,
        `goods came from ${supplier(event.supplier)}${event.note === null ? '' : `, delivery note ${event.note}`}`,
      );
    case 'order-promised':
      return line('clock', `Order ${event.order}`, `is promised for ${event.due}; it was ${event.was}`);
    case 'order-line-ended':
      return line(
        'gclosed',
        `Order ${event.order}`,
        `${event.quantity} of ${event.item} will not come: ${END_WORDS[event.why]}`,
      );
    case 'order-credited':
      return line('hint', `Order ${event.order}`, `money comes back: ${event.why}`);
    case 'trip-opened':
      return line(
        'vendor',
        `Trip ${event.trip}`,
        `goes to ${supplier(event.supplier)} on ${event.goes}, due back ${event.due}`,
      );
    case 'trip-promised':
      return line('clock', `Trip ${event.trip}`, `is promised back for ${event.due}; it was ${event.was}`);
    case 'trip-billed':
      return line('hint', `Trip ${event.trip}`, `${supplier(event.supplier)} has sent a bill`);
  }
};

const counted = (count: number, what: string): string => `${String(count)} ${what}${count === 1 ? '' : 's'}`;

const line = (sign: EventLine['sign'], thing: string, says: string): EventLine => ({ sign, thing, says });
