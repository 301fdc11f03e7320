/** What approving the week's order says, and the orders that are on their way. */
import 'server-only';
import { ONE, parseDecimal } from '@/lib/domain/base/exact';
import { quantityText } from '@/lib/domain/shop/need-words';
import { nextPurchase } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseRow } from '@/lib/domain/shop/purchase-rows';
import type { WeekSheet } from '@/lib/domain/shop/week-answer';
import type { NeedNow } from '@/lib/server/load/need';
import { moneyText } from '@/lib/wire/money';
import type { Approval, SentOrder } from '@/lib/wire/views/order';
import { weekdayWords } from '@/lib/wire/views/when';

type Shown = Pick<NeedNow, 'world' | 'names' | 'catalogue' | 'today'>;

export const approvalOf = (sheets: readonly WeekSheet[], { world }: Shown): Approval => ({
  first: nextPurchase(world.shop.orders),
  orders: sheets.map(({ supplier, ordered, goods, freight, lines }) => ({
    supplier,
    ordered,
    packs: lines.flatMap(({ packs }) => packs.map(({ offer, packs: count }) => ({ offer, packs: count }))),
    total: goods + freight,
  })),
});

/** The latest first. */
export const sentOrders = (shown: Shown): readonly SentOrder[] =>
  Object.values(shown.world.shop.orders)
    .filter(({ cancelled }) => cancelled === null)
    .sort((a, b) => (a.at < b.at ? 1 : -1))
    .map((order) => sentOrder(order, shown));

const sentOrder = (order: PurchaseRow, shown: Shown): SentOrder => {
  const { suppliers, people } = shown.world.shop;
  const supplier = suppliers[order.supplier];
  const name = supplier?.name ?? order.supplier;
  const day = (of: string): string => weekdayWords(of, shown.today);
  return {
    id: order.id,
    supplier: name,
    says: `approved by ${people[order.by]?.name ?? order.by} for ${day(order.ordered)}, comes ${day(order.due)}`,
    total: moneyText(order.goods + order.freight),
    text: [
      `Order ${order.id}, ${day(order.ordered)}`,
      '',
      ...order.lines.map((line) => lineText(line, shown)),
    ].join('\n'),
    mail: supplier?.mail ?? null,
  };
};

/** `2 × 50 insert lock nut M10 class 8, your number TF-4103, 4.20 each`. */
const lineText = (
  { item, packs, packSize, price, number }: PurchaseRow['lines'][number],
  { names, catalogue }: Shown,
): string => {
  const size = quantityText(parseDecimal(packSize) ?? ONE, catalogue[item]?.unit ?? 'pc');
  const theirs = number === null ? '' : `, your number ${number}`;
  return `${String(packs)} × ${size} ${names.item(item) ?? item}${theirs}, ${moneyText(price)} a pack`;
};
