/** Goods in, counted, taken out, put back, put away. Books give way to the shelf: no count is refused for what they say. */
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { ClaimOf } from '@/lib/domain/commands';
import type { Facts } from '@/lib/domain/facts';
import { parseLength } from '@/lib/domain/plan/cut';
import { sortedLengths } from '@/lib/domain/shop/remnants';
import { parseBin } from '@/lib/domain/shop/lot-state';
import { EMPTY_PLACE, foundBeyond, recount, stockKey, stockText } from '@/lib/domain/shop/stock';
import type { Stock, StockPlace } from '@/lib/domain/shop/stock';
import { accepted, denied } from './shop-decision';
import type { ShopDecision } from './shop-decision';
import type { Counted, PutAway, StockClaim } from '@/lib/domain/stock-claims';

export const decideStock = (facts: Facts, stock: Stock, claim: StockClaim): ShopDecision => {
  switch (claim.type) {
    case 'receive-stock':
      return together('item', claim.goods, (line) => comesIn('stock-received', facts, stock, line));
    case 'put-back':
      return comesIn('stock-put-back', facts, stock, claim);
    case 'count-stock':
      return together('count', claim.counts, (line) => counted(facts, stock, line));
    case 'put-away':
      return together('place', claim.places, (line) => putAway(facts, line));
    case 'draw-stock':
      return drawn(facts, claim);
    case 'count-remnants':
      return rackCounted(claim);
  }
};

const unreadable = (field: string, text: string, wanted: string): Refusal =>
  refuse('value-unreadable', { field, text, wanted });

const rackCounted = ({ item, lengths }: ClaimOf<'count-remnants'>): ShopDecision => {
  const read = lengths.map((text) => ({ text: text.trim(), length: parseLength(text) }));
  const bad = read.filter(({ length }) => length === null || compare(length, ZERO) <= 0);
  if (bad.length > 0)
    return denied(
      bad.map(({ text }) => unreadable(`a rest of ${item}`, text, 'a length with its unit, such as 640 mm')),
    );
  return accepted({ type: 'remnants-counted', item, lengths: sortedLengths(read.map(({ text }) => text)) });
};

/** All lines or none. The same place twice would count the second time what the first has changed already. */
const together = <Line extends { readonly item: string; readonly lot?: string }>(
  what: string,
  lines: readonly Line[],
  decide: (line: Line) => ShopDecision,
): ShopDecision => {
  const seen = new Set<string>();
  const twice = lines.flatMap((line): readonly Refusal[] => {
    const place = placeOf(line);
    const key = stockKey(place);
    const isNew = !seen.has(key);
    seen.add(key);
    if (isNew) return [];
    return [refuse('already-there', { what, key: place.lot ?? place.item })];
  });
  const decisions = lines.map(decide);
  const refusals = [...twice, ...decisions.flatMap((each) => each.refusals)];
  return refusals.length > 0
    ? denied(refusals)
    : { refusals, events: decisions.flatMap(({ events }) => events) };
};

const placeOf = ({ item, lot }: { readonly item: string; readonly lot?: string }): StockPlace => ({
  item,
  lot: lot ?? null,
});

const comesIn = (
  type: 'stock-received' | 'stock-put-back',
  facts: Facts,
  stock: Stock,
  line: { readonly item: string; readonly lot?: string; readonly quantity: string },
): ShopDecision => {
  const place = placeOf(line);
  const quantity = parseDecimal(line.quantity);
  const refusals = wrongPlace(facts, place);
  if (quantity === null || compare(quantity, ZERO) <= 0)
    return denied([...refusals, unreadable(`quantity of ${line.item}`, line.quantity, 'a number above 0')]);
  const found = stockText(foundBeyond(stock[stockKey(place)] ?? EMPTY_PLACE));
  return refusals.length > 0
    ? denied(refusals)
    : accepted({ type, ...place, quantity: stockText(quantity), found });
};

const counted = (facts: Facts, stock: Stock, line: Counted): ShopDecision => {
  const place = placeOf(line);
  const row = stock[stockKey(place)] ?? EMPTY_PLACE;
  const there = parseDecimal(line.counted);
  const refusals = wrongPlace(facts, place);
  if (there === null || compare(there, ZERO) < 0)
    return denied([...refusals, unreadable(`count of ${line.item}`, line.counted, 'a number, 0 or more')]);
  return refusals.length > 0
    ? denied(refusals)
    : accepted({ type: 'stock-counted', ...recount(place, row, there) });
};

const putAway = (facts: Facts, line: PutAway): ShopDecision => {
  const place = placeOf(line);
  const bin = parseBin(line.bin);
  const refusals = wrongPlace(facts, place);
  if (bin === null)
    return denied([
      ...refusals,
      unreadable(`bin of ${line.item}`, line.bin, 'a number and a letter, like 09C'),
    ]);
  return refusals.length > 0 ? denied(refusals) : accepted({ type: 'stock-put-away', ...place, bin });
};

/** A warning: what went is gone, whatever the books say it was. The lot says what it holds. */
const drawn = (facts: Facts, claim: ClaimOf<'draw-stock'>): ShopDecision => {
  const { item, lot } = placeOf(claim);
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

/** A lot that nobody received, or that holds something else. */
const wrongPlace = ({ lots }: Facts, { item, lot }: StockPlace): readonly Refusal[] => {
  if (lot === null) return [];
  const held = lots[lot];
  if (held === undefined) return [refuse('unknown-thing', { what: 'lot', key: lot })];
  return held.item === item ? [] : [refuse('lot-of-other-item', { lot, item, holds: held.item })];
};
