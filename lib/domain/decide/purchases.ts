/** Orders: approved as they were seen or not at all, received as they came, and what becomes of what did not come. */
import { ZERO, compare } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Facts } from '@/lib/domain/facts';
import type { PurchaseClaim } from '@/lib/domain/purchase-claims';
import { depositsOf, outstandingOf } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { stockText } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import { approve } from './approve';
import { receive } from './receive';
import { accepted, denied } from './shop-decision';
import type { ShopDecision } from './shop-decision';

export const decidePurchase = (facts: Facts, stock: Stock, claim: PurchaseClaim): ShopDecision => {
  if (claim.type === 'approve-order') return approve(facts, claim.first, claim.orders);
  const order = facts.supply.orders[claim.order];
  if (order === undefined) return denied([refuse('unknown-thing', { what: 'order', key: claim.order })]);
  const of = { order: order.id, supplier: order.supplier };
  switch (claim.type) {
    case 'receive-order':
      return receive(facts, stock, order, claim);
    case 'promise-order':
      return claim.due === order.due
        ? accepted()
        : accepted({ type: 'order-promised', ...of, due: claim.due, was: order.due });
    case 'credit-order':
      return credited(order, claim);
    case 'end-order-line':
      return endLine(order, claim);
  }
};

const credited = (
  order: PurchaseOrder,
  { money, why, isDeposit = false }: Extract<PurchaseClaim, { type: 'credit-order' }>,
): ShopDecision => {
  const { open } = depositsOf(order);
  if (isDeposit && money > open)
    return denied([refuse('deposit-not-owed', { order: order.id, money, open })]);
  const of = { order: order.id, supplier: order.supplier };
  return accepted({ type: 'order-credited', ...of, money, why, ...(isDeposit ? { isDeposit } : {}) });
};

const unknownLine = (order: string, line: number): Refusal =>
  refuse('unknown-thing', { what: 'line', key: `${String(line + 1)} of order ${order}` });

const endLine = (
  order: PurchaseOrder,
  { line: named, why }: Extract<PurchaseClaim, { type: 'end-order-line' }>,
): ShopDecision => {
  if (named !== undefined && order.lines[named] === undefined) return denied([unknownLine(order.id, named)]);
  const ended = order.lines.flatMap((line, index) => {
    const left = outstandingOf(line);
    return (named ?? index) === index && compare(left, ZERO) > 0 ? [{ index, left, item: line.item }] : [];
  });
  if (ended.length === 0)
    return denied([
      refuse('nothing-outstanding', { order: order.id, item: order.lines[named ?? 0]?.item ?? '' }),
    ]);
  return accepted(
    ...ended.map(({ index, left, item }) => ({
      type: 'order-line-ended' as const,
      order: order.id,
      supplier: order.supplier,
      line: index,
      item,
      quantity: stockText(left),
      why,
    })),
  );
};
