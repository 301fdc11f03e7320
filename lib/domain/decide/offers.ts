/** The shop's books of buying: terms of items, suppliers, offers, and what is insisted on for an order. */
import { ZERO, compare, parseDecimal, toDecimalText } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import { isSame } from '@/lib/domain/base/same';
import type { Facts } from '@/lib/domain/facts';
import { isCounted } from '@/lib/domain/shop/item';
import { isOutside, quoteId } from '@/lib/domain/shop/outside-quotes';
import { offerId } from '@/lib/domain/shop/offer-rows';
import type { ItemPin, OfferRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import type { ItemTermsClaim, OfferClaim, SupplyClaim } from '@/lib/domain/supply-claims';
import type { SupplyPayload } from '@/lib/domain/supply-payload';
import { isBought, isItem, judgeItem, nowhere, unitOf } from './items';
import type { Judged, PlaceOf } from './items';

interface SupplyDecision {
  readonly refusals: readonly Refusal[];
  readonly events: readonly SupplyPayload[];
}

type Of<Type extends SupplyClaim['type']> = Extract<SupplyClaim, { readonly type: Type }>;

const accept = (...events: readonly SupplyPayload[]): SupplyDecision => ({ refusals: [], events });
const deny = (...refusals: readonly Refusal[]): SupplyDecision => ({ refusals, events: [] });
const unknown = (what: string, key: string): Refusal => refuse('unknown-thing', { what, key });

export const decideSupply = (facts: Facts, claim: SupplyClaim): SupplyDecision => {
  const { items, suppliers, offers, pins } = facts.supply;
  switch (claim.type) {
    case 'set-item': {
      const { refusals, row } = judgeItem(facts, claim, (key) => isItem(facts, key), nowhere);
      if (row === null) return deny(...refusals);
      return isSame(items[row.id], row) ? accept() : accept({ type: 'item-set', item: row });
    }
    case 'set-supplier': {
      const { refusals, row } = judgeSupplier(facts, claim);
      if (row === null) return deny(...refusals);
      return isSame(suppliers[row.id], row) ? accept() : accept({ type: 'supplier-set', supplier: row });
    }
    case 'set-offer': {
      const { refusals, row } = judgeOffer(facts, claim, nowhere);
      if (row === null) return deny(...refusals);
      return isSame(offers[row.id], row) ? accept() : accept({ type: 'offer-set', offer: row });
    }
    case 'end-offer': {
      const offer = offers[claim.offer];
      if (offer === undefined) return deny(unknown('offer', claim.offer));
      const { id, item, supplier, ended } = offer;
      return ended
        ? deny(refuse('offer-ended', { offer: id }))
        : accept({ type: 'offer-ended', offer: id, item, supplier });
    }
    case 'import-items':
      return importItems(facts, claim);
    case 'import-offers':
      return importOffers(facts, claim);
    case 'pin-line':
      return pinLine(facts, claim);
    case 'quote-outside':
      return quoteOutside(facts, claim);
    case 'unpin-line': {
      const line = pins[claim.item];
      return line === undefined || line.pin === null
        ? deny(unknown('line that anything was insisted on for', claim.item))
        : accept({ type: 'line-unpinned', line: { ...line, pin: null, since: facts.day } });
    }
  }
};

// ---- a supplier ----

const judgeSupplier = (facts: Facts, claim: Of<'set-supplier'>): Judged<SupplierRow> => {
  const { supplier: id, name, lead, takesToday = false, minimumValue = 0, mail } = claim;
  const orderDays = [...new Set(claim.orderDays)].sort((a, b) => a - b);
  const freight = claim.freight ?? { by: 'value', steps: [{ from: 0, fee: 0 }] };
  const froms = freight.steps.map(({ from }) => from);
  const weightless = Object.values(facts.supply.offers).find(
    (offer) => offer.supplier === id && !offer.ended && offer.weight === 0,
  );
  const refusals: Refusal[] = [
    ...(orderDays.length === 0 && !takesToday ? [refuse('no-order-day', { supplier: name })] : []),
    ...(froms[0] === 0 ? rising(froms, 'freight') : [stepsRefusal('freight', froms)]),
    ...(freight.by === 'weight' && weightless !== undefined
      ? [refuse('weight-missing', { supplier: name, item: weightless.item })]
      : []),
  ];
  const row = { id, name, orderDays, lead, takesToday, minimumValue, freight, mail: mail ?? null };
  return { refusals, row: refusals.length > 0 ? null : row };
};

const stepsRefusal = (of: string, steps: readonly number[]): Refusal =>
  refuse('steps-out-of-order', { of, what: steps.length === 0 ? 'there are none' : steps.join(', ') });

const rising = (steps: readonly number[], of: string): readonly Refusal[] =>
  steps.length > 0 && steps.every((step, index) => index === 0 || step > (steps[index - 1] ?? step))
    ? []
    : [stepsRefusal(of, steps)];

// ---- an offer ----

const judgeOffer = (facts: Facts, claim: OfferClaim, at: PlaceOf): Judged<OfferRow> => {
  const { supplier, item, prices, weight = 0, number, deposit = 0 } = claim;
  const seller = facts.supply.suppliers[supplier];
  const isKnown = isBought(facts, item);
  const size = parseDecimal(claim.pack);
  const unit = unitOf(facts, item);
  const isPack = size !== null && compare(size, ZERO) > 0 && (!isCounted(unit) || size.den === 1n);
  const wanted = isCounted(unit) ? `a whole number of ${unit}` : `how many ${unit} are in it`;
  const steps = rising(
    prices.map(({ fromPacks }) => fromPacks),
    'prices',
  );
  const refusals: Refusal[] = [
    ...(seller === undefined
      ? [refuse('unknown-thing', { what: 'supplier', key: supplier }, at('supplier'))]
      : []),
    ...(isKnown ? [] : [refuse('unknown-thing', { what: 'item', key: item }, at('item'))]),
    ...(isKnown && !isPack
      ? [refuse('value-unreadable', { field: 'pack', text: claim.pack, wanted }, at('pack'))]
      : []),
    ...steps.map((each) => ({ ...each, ...at('prices') })),
    ...(seller?.freight.by === 'weight' && weight === 0
      ? [refuse('weight-missing', { supplier: seller.name, item }, at('weight'))]
      : []),
  ];
  if (refusals.length > 0 || size === null) return { refusals, row: null };
  const packSize = toDecimalText(size);
  return {
    refusals,
    row: {
      id: offerId(supplier, item, packSize),
      supplier,
      item,
      packSize,
      steps: prices,
      weight,
      number: number ?? null,
      ...(deposit === 0 ? {} : { deposit }),
      ended: false,
    },
  };
};

// ---- files: all of it, or nothing ----

const placeIn =
  (row: number): PlaceOf =>
  (column) => ({ place: { row, column } });

const importItems = (facts: Facts, { items, firstRow = 1 }: Of<'import-items'>): SupplyDecision => {
  const inFile = new Set(items.map(({ item }) => item));
  return imported(
    items,
    firstRow,
    'item',
    (claim: ItemTermsClaim, at) =>
      judgeItem(facts, claim, (key) => inFile.has(key) || isItem(facts, key), at),
    facts.supply.items,
    (rows) => ({ type: 'items-imported', items: rows }),
  );
};

const importOffers = (facts: Facts, { offers, firstRow = 1 }: Of<'import-offers'>): SupplyDecision =>
  imported(
    offers,
    firstRow,
    'offer',
    (claim: OfferClaim, at) => judgeOffer(facts, claim, at),
    facts.supply.offers,
    (rows) => ({ type: 'offers-imported', offers: rows }),
  );

const imported = <Claim, Row extends { readonly id: string }>(
  claims: readonly Claim[],
  firstRow: number,
  what: string,
  judge: (claim: Claim, at: PlaceOf) => Judged<Row>,
  before: Readonly<Record<string, Row>>,
  event: (rows: readonly Row[]) => SupplyPayload,
): SupplyDecision => {
  const refusals: Refusal[] = [];
  const rows = new Map<string, Row>();
  for (const [index, claim] of claims.entries()) {
    const at = placeIn(firstRow + index);
    const judged = judge(claim, at);
    refusals.push(...judged.refusals);
    if (judged.row === null) continue;
    const { id } = judged.row;
    if (rows.has(id)) refusals.push(refuse('given-before', { what, key: id }, at(what)));
    rows.set(id, judged.row);
  }
  if (refusals.length > 0) return deny(...refusals);
  const changed = [...rows.values()].filter((row) => !isSame(before[row.id], row));
  return changed.length === 0 ? accept() : accept(event(changed));
};

// ---- what is insisted on ----

const quoteOutside = (
  { plans, supply }: Facts,
  { plan, key, money }: Of<'quote-outside'>,
): SupplyDecision => {
  const documents = Object.values(plans).filter((document) => document.plan === plan);
  if (documents.length === 0) return deny(unknown('plan', plan));
  if (!documents.some((document) => isOutside(document, key))) return deny(unknown('work outside', key));
  const quote = { id: quoteId(plan, key), plan, key, money };
  return isSame(supply.quotes[quote.id], quote) ? accept() : accept({ type: 'outside-quoted', quote });
};

const pinLine = (facts: Facts, claim: Of<'pin-line'>): SupplyDecision => {
  const { item, supplier = null, quantity = null, buyToday = false, exclude = false } = claim;
  if (!isBought(facts, item)) return deny(unknown('item', item));
  const { suppliers, offers, pins } = facts.supply;
  const seller = supplier === null ? undefined : suppliers[supplier];
  if (supplier !== null && seller === undefined) return deny(unknown('supplier', supplier));
  const refusals: Refusal[] = [];
  const sold = Object.values(offers).filter((offer) => !offer.ended && offer.item === item);
  if (seller !== undefined && !sold.some((offer) => offer.supplier === seller.id))
    refusals.push(refuse('not-offered', { item, supplier: seller.name }));
  const count = quantity === null ? null : parseDecimal(quantity);
  const isWhole = count === null || !isCounted(unitOf(facts, item)) || count.den === 1n;
  if (quantity !== null && (count === null || compare(count, ZERO) <= 0 || !isWhole))
    refusals.push(
      refuse('value-unreadable', {
        field: 'quantity',
        text: quantity,
        wanted: `how many ${unitOf(facts, item)}`,
      }),
    );
  if (supplier === null && quantity === null && !buyToday && !exclude)
    refusals.push(refuse('pin-empty', { item }));
  if (refusals.length > 0) return deny(...refusals);
  const pin: ItemPin = {
    supplier,
    quantity: count === null ? null : toDecimalText(count),
    buyToday,
    isExcluded: exclude,
  };
  return isSame(pins[item]?.pin, pin)
    ? accept()
    : accept({ type: 'line-pinned', line: { id: item, pin, since: facts.day } });
};
