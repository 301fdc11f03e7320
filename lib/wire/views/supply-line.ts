/** What happened to the books of buying, in the shop's words. Everybody reads the log, so that no price stands here. */
import { all } from '@/lib/domain/base/words';
import type { SupplyPayload } from '@/lib/domain/supply-payload';
import type { EventLine } from './log';

export const supplyLine = (event: SupplyPayload): EventLine => {
  switch (event.type) {
    case 'item-set':
      return line('hint', event.item.own?.name ?? event.item.id, 'has terms of the shop’s own');
    case 'supplier-set':
      return line('add', event.supplier.name, 'sells to the shop, on these terms');
    case 'offer-set':
      return line(
        'hint',
        event.offer.item,
        `is offered by ${event.offer.supplier} in packs of ${event.offer.packSize}`,
      );
    case 'offer-ended':
      return line('gclosed', event.item, `is no longer offered so by ${event.supplier}`);
    case 'items-imported':
      return line('add', counted(event.items.length, 'item'), 'from a file');
    case 'offers-imported':
      return line('add', counted(event.offers.length, 'offer'), 'from a file');
    case 'line-pinned':
      return line('hint', event.line.id, 'is ordered as was insisted on, whatever is cheapest');
    case 'line-unpinned':
      return line('hint', event.line.id, 'is ordered as is cheapest again');
    case 'order-approved':
      return line(
        'passed',
        all(event.orders.map(({ id }) => id)),
        `${event.orders.length === 1 ? 'is' : 'are'} ordered`,
      );
    case 'order-cancelled':
      return line('gclosed', event.order, `is cancelled: ${event.reason}`);
  }
};

const counted = (count: number, what: string): string => `${String(count)} ${what}${count === 1 ? '' : 's'}`;

const line = (sign: EventLine['sign'], thing: string, says: string): EventLine => ({ sign, thing, says });
