/** Events of orders. */
import type { Meta } from '@/lib/domain/event-meta';
import type { PurchasePayload } from '@/lib/domain/purchase-payload';
import { plus } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLine, PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import type { Shop } from '@/lib/domain/shop/rows';
import { stockText } from '@/lib/domain/shop/stock';

export const evolvePurchase = (shop: Shop, event: PurchasePayload & { readonly meta: Meta }): Shop => {
  const { by, at } = event.meta;
  switch (event.type) {
    case 'order-approved':
      return { ...shop, orders: { ...shop.orders, [event.order.id]: event.order } };
    case 'order-promised':
      return onOrder(shop, event.order, (order) => ({ ...order, due: event.due }));
    case 'order-credited': {
      const { money, why, isDeposit } = event;
      const credit = { money, why, at, by, ...(isDeposit === true ? { isDeposit } : {}) };
      return onOrder(shop, event.order, (order) => ({ ...order, credits: [...order.credits, credit] }));
    }
    case 'order-line-ended':
      return onOrder(shop, event.order, (order) =>
        onLine(order, event.line, (line) => ({ ...line, ended: { why: event.why, at, by } })),
      );
    case 'order-received':
      return onOrder(shop, event.order, (order) =>
        event.lines.reduce<PurchaseOrder>(
          (now, { line: index, good, damaged, wrong, lot }) =>
            onLine(now, index, (line) => ({
              ...line,
              good: stockText(plus(line.good, good)),
              damaged: stockText(plus(line.damaged, damaged)),
              wrong: stockText(plus(line.wrong, wrong)),
              lots: lot === null ? line.lots : [...line.lots, lot],
            })),
          { ...order, deliveries: [...order.deliveries, { note: event.note, at, by }] },
        ),
      );
  }
};

const onOrder = (shop: Shop, id: string, change: (order: PurchaseOrder) => PurchaseOrder): Shop => {
  const order = shop.orders[id];
  return order === undefined ? shop : { ...shop, orders: { ...shop.orders, [id]: change(order) } };
};

const onLine = (
  order: PurchaseOrder,
  index: number,
  change: (line: PurchaseLine) => PurchaseLine,
): PurchaseOrder => ({
  ...order,
  lines: order.lines.map((line, at) => (at === index ? change(line) : line)),
});
