/**
 * Approving: what was seen is what is sent. Every price, pack and freight is looked up again; what is another by now is
 * refused, so that nobody pays what they have not read. Who proposed it does not matter here: a solver or a hand.
 */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { ApprovedLine, ApprovedOrder } from '@/lib/domain/purchase-claims';
import type { OfferRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import { arrivalOf, freightOf, orderDayFrom } from '@/lib/domain/shop/order';
import type { PriceStep } from '@/lib/domain/shop/order';
import { nextOrder } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLine, PurchaseOrder } from '@/lib/domain/shop/purchase-rows';
import { dayFrom, dayNumber } from '@/lib/domain/shop/week';
import type { SupplyPayload } from '@/lib/domain/supply-payload';
import type { ShopDecision } from './shop-decision';

interface Judged {
  readonly refusals: readonly Refusal[];
  readonly order: Omit<PurchaseOrder, 'id'> | null;
}

/** All of them or none: they were weighed against each other. */
export const approve = (facts: Facts, named: string, orders: readonly ApprovedOrder[]): ShopDecision => {
  const first = nextOrder(facts.supply.orders);
  if (named !== String(first))
    return { refusals: [refuse('ordered-since', { order: String(first - 1) })], events: [] };
  const judged = orders.map((order) => judge(facts, order));
  const refusals = judged.flatMap((each) => each.refusals);
  if (refusals.length > 0) return { refusals, events: [] };
  return {
    refusals,
    events: [
      ...judged.flatMap(({ order }, index) =>
        order === null
          ? []
          : [{ type: 'order-approved' as const, order: { ...order, id: String(first + index) } }],
      ),
      ...unpinned(facts),
    ],
  };
};

/** It was for the order that is approved now; the next begins anew. */
const unpinned = ({ supply, day }: Facts): readonly SupplyPayload[] =>
  Object.values(supply.pins).flatMap((line): readonly SupplyPayload[] =>
    line.pin === null ? [] : [{ type: 'line-unpinned', line: { ...line, pin: null, since: day } }],
  );

const judge = (facts: Facts, { supplier: id, ordered, freight, lines }: ApprovedOrder): Judged => {
  const supplier = facts.supply.suppliers[id];
  if (supplier === undefined)
    return { refusals: [refuse('unknown-thing', { what: 'supplier', key: id })], order: null };
  const read = lines.map((line, index) => judgeLine(facts, supplier, line, lines.slice(0, index)));
  const refusals = [
    ...(isOrderDay(supplier, ordered, facts)
      ? []
      : [refuse('order-day-past', { supplier: supplier.name, day: ordered })]),
    ...read.flatMap((each) => each.refusals),
  ];
  const bought = read.flatMap(({ line }) => (line === null ? [] : [line]));
  const goods = bought.reduce((sum, { packs, price }) => sum + packs * price, 0);
  const weight = lines.reduce(
    (sum, { offer, packs }) => sum + packs * (facts.supply.offers[offer]?.weight ?? 0),
    0,
  );
  if (refusals.length === 0) {
    if (goods < supplier.minimumValue)
      refusals.push(
        refuse('order-too-small', { supplier: supplier.name, goods, least: supplier.minimumValue }),
      );
    const now = freightOf(supplier.freight, supplier.freight.by === 'value' ? goods : weight);
    if (now !== freight)
      refusals.push(refuse('freight-changed', { supplier: supplier.name, seen: freight, now }));
  }
  if (refusals.length > 0) return { refusals, order: null };
  return {
    refusals,
    order: {
      supplier: id,
      ordered,
      due: dayFrom(arrivalOf(dayNumber(ordered), supplier.lead, USUAL_WEEK.days.shut)),
      goods,
      freight,
      approvedBy: facts.actor,
      approvedAt: facts.judgedAt,
      lines: bought,
      deliveries: [],
      credits: [],
    },
  };
};

interface JudgedLine {
  readonly refusals: readonly Refusal[];
  readonly line: PurchaseLine | null;
}

const judgeLine = (
  { supply }: Facts,
  supplier: SupplierRow,
  { offer: id, packs, price, cars }: ApprovedLine,
  before: readonly ApprovedLine[],
): JudgedLine => {
  const offer = supply.offers[id];
  const no = (...refusals: readonly Refusal[]): JudgedLine => ({ refusals, line: null });
  if (offer === undefined || offer.ended || offer.supplier !== supplier.id)
    return no(refuse('unknown-thing', { what: `offer of ${supplier.name}`, key: id }));
  if (before.some((each) => each.offer === id)) return no(refuse('given-before', { what: 'offer', key: id }));
  const now = priceOf(offer.steps, packs);
  if (now === null)
    return no(refuse('too-few-packs', { item: offer.item, packs, fewest: offer.steps[0]?.fromPacks ?? 0 }));
  if (now !== price)
    return no(
      refuse('price-changed', {
        item: offer.item,
        supplier: supplier.name,
        pack: offer.packSize,
        seen: price,
        now,
      }),
    );
  return { refusals: [], line: lineOf(offer, packs, price, cars) };
};

const priceOf = (steps: readonly PriceStep[], packs: number): number | null =>
  steps.findLast(({ fromPacks }) => packs >= fromPacks)?.price ?? null;

const lineOf = (
  { id, item, number, packSize, deposit }: OfferRow,
  packs: number,
  price: number,
  cars: ApprovedLine['cars'],
): PurchaseLine => ({
  offer: id,
  item,
  number,
  packs,
  packSize,
  price,
  ...(deposit === undefined ? {} : { deposit }),
  cars,
  good: '0',
  damaged: '0',
  wrong: '0',
  lots: [],
  ended: null,
});

/** Their next order day, or today where they take one on any day. */
const isOrderDay = (supplier: SupplierRow, ordered: Day, { day }: Facts): boolean =>
  orderDayFrom(supplier, dayNumber(day)) === dayNumber(ordered) || (supplier.takesToday && ordered === day);
