/** Goods in: what came of an order, line by line. Traced goods make lots, the rest goes into its bin. */
import { ZERO, compare, divide, exact, parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key, LotId } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { CameIn, PurchaseClaim } from '@/lib/domain/purchase-claims';
import type { ShopPayload } from '@/lib/domain/shop-payload';
import { lotName, nextLotNumber } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLine, PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { EMPTY_PLACE, foundBeyond, stockKey, stockText } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import { plannedItem } from './items';
import type { ShopDecision } from './shop-decision';
import { receivedLot } from './received-lot';

type Receive = Extract<PurchaseClaim, { type: 'receive-order' }>;

interface Arrived {
  readonly came: CameIn;
  readonly line: PurchaseLine;
  readonly good: Exact;
  readonly damaged: Exact;
  readonly wrong: Exact;
  /** Null for bulk, and where none of it was good. */
  readonly lot: LotId | null;
}

/** Over what was ordered is received too: it is there. Nothing at all is no delivery. */
export const receive = (
  facts: Facts,
  stock: Stock,
  order: PurchaseOrder,
  { lines, note }: Receive,
): ShopDecision => {
  const refusals: Refusal[] = [];
  const arrived: Arrived[] = [];
  for (const came of lines) {
    const line = order.lines[came.line];
    const key = `${String(came.line + 1)} of order ${order.id}`;
    if (line === undefined) refusals.push(refuse('unknown-thing', { what: 'line', key }));
    else if (arrived.some((each) => each.came.line === came.line))
      refusals.push(refuse('given-before', { what: 'line', key }));
    else arrived.push(read(facts, came, line, arrived, refusals));
  }
  if (refusals.length === 0 && !arrived.some(({ good, damaged, wrong }) => isAny(good, damaged, wrong)))
    refusals.push(refuse('nothing-came', { order: order.id }));
  if (refusals.length > 0) return { refusals, events: [] };
  return {
    refusals,
    events: [
      {
        type: 'order-received',
        order: order.id,
        supplier: order.supplier,
        note: note ?? null,
        lines: arrived.map(({ came, good, damaged, wrong, lot }) => ({
          line: came.line,
          good: stockText(good),
          damaged: stockText(damaged),
          wrong: stockText(wrong),
          lot,
        })),
      },
      ...intoStock(facts, stock, order, arrived),
    ],
  };
};

const isAny = (...quantities: readonly Exact[]): boolean =>
  quantities.some((quantity) => compare(quantity, ZERO) > 0);

const read = (
  facts: Facts,
  came: CameIn,
  line: PurchaseLine,
  before: readonly Arrived[],
  refusals: Refusal[],
): Arrived => {
  const quantity = (field: 'good' | 'damaged' | 'wrong'): Exact => {
    const text = came[field] ?? '0';
    const value = parseDecimal(text);
    if (value !== null && compare(value, ZERO) >= 0) return value;
    refusals.push(
      refuse('value-unreadable', { field: `${field} of ${line.item}`, text, wanted: 'a number, 0 or more' }),
    );
    return ZERO;
  };
  const good = quantity('good');
  const isLot = isTraced(facts, line.item) && compare(good, ZERO) > 0;
  const made = before.filter(({ lot }) => lot !== null).length;
  const lot = isLot ? (came.lot ?? lotName(nextLotNumber(facts.lots) + made)) : null;
  if (lot !== null && (facts.lots[lot] !== undefined || before.some((each) => each.lot === lot)))
    refusals.push(refuse('already-there', { what: 'lot', key: lot }));
  return { came, line, good, damaged: quantity('damaged'), wrong: quantity('wrong'), lot };
};

/** A part that is bought whole is followed on its car, and an item by what its plan or the shop says. */
const isTraced = (facts: Facts, item: Key): boolean =>
  (plannedItem(facts, item)?.trace ?? facts.supply.items[item]?.own?.trace) === 'lot';

const intoStock = (
  facts: Facts,
  stock: Stock,
  order: PurchaseOrder,
  arrived: readonly Arrived[],
): readonly ShopPayload[] => {
  const seen = new Set<Key>();
  return arrived.flatMap(({ came, line, good, lot }): readonly ShopPayload[] => {
    if (compare(good, ZERO) === 0) return [];
    const { item } = line;
    if (lot !== null) {
      const paid = divide(exact(line.price), parseDecimal(line.packSize) ?? exact(1)) ?? ZERO;
      const { certificate, certificateAsked, expires } = came;
      const quantity = Number(stockText(good));
      const claim = { lot, item, quantity, certificate, certificateAsked, expires };
      return [
        {
          type: 'lot-received',
          lot: { ...receivedLot(facts, claim), order: order.id, cost: stockText(paid) },
        },
      ];
    }
    // Two packs of one item are two lines; what was found before is booked with the first.
    const place = { item, lot: null };
    const found = seen.has(item) ? ZERO : foundBeyond(stock[stockKey(place)] ?? EMPTY_PLACE);
    seen.add(item);
    return [{ type: 'stock-received', ...place, quantity: stockText(good), found: stockText(found) }];
  });
};
