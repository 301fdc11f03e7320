/** What approving the week's order says, and the orders that are on their way. */
import 'server-only';
import type { ApprovedOrder } from '@/lib/domain/purchase-claims';
import { isOpen, nextOrder } from '@/lib/domain/shop/purchase-rows';
import { stockText } from '@/lib/domain/shop/stock';
import type { SheetLine, WeekSheet } from '@/lib/domain/shop/week-answer';
import type { NeedNow } from '@/lib/server/load/need';
import { moneyText } from '@/lib/wire/money';
import type { Approval, SentOrder } from '@/lib/wire/views/order';
import { weekdayWords } from '@/lib/wire/views/when';

type Shown = Pick<NeedNow, 'world' | 'today'>;

export const approvalOf = (sheets: readonly WeekSheet[], { world }: Shown): Approval => ({
  first: String(nextOrder(world.shop.orders)),
  orders: sheets.map(({ supplier, ordered, freight, lines }) => ({
    supplier,
    ordered,
    freight,
    lines: lines.flatMap(approvedLines),
  })),
});

/** An item in two packs is two lines; for whom it is stands with the first. */
const approvedLines = ({ packs, cars }: SheetLine): ApprovedOrder['lines'] =>
  packs.map(({ offer, packs: count, cost }, index) => ({
    offer,
    packs: count,
    price: cost / count,
    cars: index > 0 ? [] : cars.map(({ car, quantity }) => ({ car, quantity: stockText(quantity) })),
  }));

/** On their way, the soonest first. */
export const sentOrders = ({ world: { shop }, today }: Shown): readonly SentOrder[] =>
  Object.values(shop.orders)
    .filter(isOpen)
    .sort((a, b) => a.due.localeCompare(b.due))
    .map(({ id, supplier, due, goods, freight }) => ({
      id,
      supplier: shop.suppliers[supplier]?.name ?? supplier,
      says: `${due < today ? 'was to come' : 'comes'} ${weekdayWords(due, today)}`,
      isLate: due < today,
      total: moneyText(goods + freight),
    }));
