/** Goods in, counted, taken out, put back, put away. Books give way to the shelf: no count is ever refused for what they say. */
import { ZERO, compare, parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { ClaimOf } from '@/lib/domain/commands';
import type { Facts } from '@/lib/domain/facts';
import type { ShopPayload } from '@/lib/domain/shop-payload';
import { parseBin } from '@/lib/domain/shop/lot-state';
import { EMPTY_PLACE, foundBeyond, onHand, stockKey, stockText } from '@/lib/domain/shop/stock';
import type { Stock, StockPlace } from '@/lib/domain/shop/stock';
import type { StockClaim } from '@/lib/domain/stock-claims';

interface StockDecision {
  readonly refusals: readonly Refusal[];
  readonly events: readonly ShopPayload[];
}

export const decideStock = (facts: Facts, stock: Stock, claim: StockClaim): StockDecision => {
  const place: StockPlace = { item: claim.item, lot: ('lot' in claim ? claim.lot : undefined) ?? null };
  if (claim.type === 'draw-stock') return drawn(facts, claim, place);
  const wrong = wrongPlace(facts, place);
  const row = stock[stockKey(place)] ?? EMPTY_PLACE;
  const found = stockText(foundBeyond(row));
  switch (claim.type) {
    case 'receive-stock':
      return withQuantity(wrong, claim.quantity, 'quantity', (quantity) => ({
        type: 'stock-received',
        ...place,
        quantity,
        found,
      }));
    case 'put-back':
      return withQuantity(wrong, claim.quantity, 'quantity', (quantity) => ({
        type: 'stock-put-back',
        ...place,
        quantity,
        found,
      }));
    case 'count-stock': {
      const counted = parseDecimal(claim.counted);
      if (counted === null || compare(counted, ZERO) < 0)
        return denied([...wrong, unreadable('counted', claim.counted, 'a number, 0 or more')]);
      return wrong.length > 0
        ? denied(wrong)
        : accepted({
            type: 'stock-counted',
            ...place,
            counted: stockText(counted),
            had: stockText(onHand(row)),
            more: stockText(positive(subtract(counted, onHand(row)))),
            fewer: stockText(positive(subtract(onHand(row), counted))),
            found,
          });
    }
    case 'put-away': {
      const bin = parseBin(claim.bin);
      if (bin === null)
        return denied([...wrong, unreadable('bin', claim.bin, 'a number and a letter, like 09C')]);
      return wrong.length > 0 ? denied(wrong) : accepted({ type: 'stock-put-away', ...place, bin });
    }
  }
};

/** A warning: what went is gone, whatever the books say it was. The lot says what it holds. */
const drawn = (facts: Facts, claim: ClaimOf<'draw-stock'>, { item, lot }: StockPlace): StockDecision => {
  const held = lot === null ? null : facts.lots[lot];
  const quantity = parseDecimal(claim.quantity);
  if (held === undefined) return denied([refuse('unknown-thing', { what: 'lot', key: lot ?? '' })]);
  if (quantity === null || compare(quantity, ZERO) <= 0)
    return denied([refuse('unknown-thing', { what: 'quantity', key: claim.quantity })]);
  return accepted({
    type: 'stock-drawn',
    item: held?.item ?? item,
    lot,
    quantity: stockText(quantity),
    reason: claim.reason,
    forCar: claim.forCar ?? null,
  });
};

const accepted = (event: ShopPayload): StockDecision => ({ refusals: [], events: [event] });
const denied = (refusals: readonly Refusal[]): StockDecision => ({ refusals, events: [] });
const positive = (value: Exact): Exact => (compare(value, ZERO) > 0 ? value : ZERO);
const unreadable = (field: string, text: string, wanted: string): Refusal =>
  refuse('value-unreadable', { field, text, wanted });

const withQuantity = (
  wrong: readonly Refusal[],
  text: string,
  field: string,
  event: (quantity: string) => ShopPayload,
): StockDecision => {
  const quantity = parseDecimal(text);
  if (quantity === null || compare(quantity, ZERO) <= 0)
    return denied([...wrong, unreadable(field, text, 'a number above 0')]);
  return wrong.length > 0 ? denied(wrong) : accepted(event(stockText(quantity)));
};

/** A lot that nobody received, or that holds something else. */
const wrongPlace = ({ lots }: Facts, { item, lot }: StockPlace): readonly Refusal[] => {
  if (lot === null) return [];
  const held = lots[lot];
  if (held === undefined) return [refuse('unknown-thing', { what: 'lot', key: lot })];
  return held.item === item ? [] : [refuse('lot-of-other-item', { lot, item, holds: held.item })];
};
