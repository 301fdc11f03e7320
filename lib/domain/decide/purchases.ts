/** Approving the week's order: what was seen is what is frozen, or it is refused because something has changed since. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Facts } from '@/lib/domain/facts';
import { USUAL_WEEK } from '@/lib/domain/shop/need-days';
import type { OfferRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import { arrivalOf, freightOf, orderDayFrom } from '@/lib/domain/shop/order';
import { nextPurchase } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLine, PurchaseRow } from '@/lib/domain/shop/purchase-rows';
import { dayFrom, dayNumber } from '@/lib/domain/shop/week';
import type { ApprovedClaim } from '@/lib/domain/supply-claims';

interface Judged {
  readonly refusals: readonly Refusal[];
  readonly orders: readonly PurchaseRow[];
}

/** All of them, or none. `first` is what the first will be called: whoever saw that has seen all orders before it. */
export const judgeApproval = (facts: Facts, first: string, claims: readonly ApprovedClaim[]): Judged => {
  if (nextPurchase(facts.supply.orders) !== first)
    return { refusals: [refuse('ordered-since', { first })], orders: [] };
  const judged = claims.map((claim, index) => judgeOne(facts, claim, index));
  const refusals = judged.flatMap((each) => each.refusals);
  return { refusals, orders: refusals.length > 0 ? [] : judged.flatMap(({ orders }) => orders) };
};

const judgeOne = (facts: Facts, claim: ApprovedClaim, ahead: number): Judged => {
  const { suppliers, offers, orders } = facts.supply;
  const supplier = suppliers[claim.supplier];
  if (supplier === undefined)
    return { refusals: [refuse('unknown-thing', { what: 'supplier', key: claim.supplier })], orders: [] };
  const lines = claim.packs.map(({ offer, packs }) => lineOf(offers[offer], supplier, packs));
  const known = lines.filter((line) => line !== null);
  const goods = known.reduce((sum, { packs, price }) => sum + packs * price, 0);
  const weight = known.reduce((sum, { offer, packs }) => sum + packs * (offers[offer]?.weight ?? 0), 0);
  const { by, steps } = supplier.freight;
  const freight = freightOf({ by, steps }, by === 'value' ? goods : weight);
  const isAsSeen =
    known.length === lines.length && goods + freight === claim.total && goods >= supplier.minimumValue;
  const refusals: readonly Refusal[] = [
    ...(isOrderDay(supplier, claim.ordered, facts)
      ? []
      : [refuse('order-day-past', { supplier: supplier.name, day: claim.ordered })]),
    ...(isAsSeen ? [] : [refuse('prices-changed', { supplier: supplier.name })]),
  ];
  const row: PurchaseRow = {
    id: nextPurchase(orders, ahead),
    supplier: supplier.id,
    ordered: claim.ordered,
    due: dayFrom(arrivalOf(dayNumber(claim.ordered), supplier.lead, USUAL_WEEK.days.shut)),
    lines: known,
    goods,
    freight,
    by: facts.actor,
    at: facts.judgedAt,
    cancelled: null,
  };
  return { refusals, orders: [row] };
};

/** Null where it is not sold any more, or not so few of it. */
const lineOf = (offer: OfferRow | undefined, { id }: SupplierRow, packs: number): PurchaseLine | null => {
  if (offer === undefined || offer.supplier !== id || offer.ended) return null;
  const price = offer.steps.findLast(({ fromPacks }) => packs >= fromPacks)?.price;
  if (price === undefined) return null;
  const { item, packSize, number } = offer;
  return { offer: offer.id, item, packs, packSize, price, number };
};

/** Today, where they take one today, or their next order day. */
const isOrderDay = (supplier: SupplierRow, ordered: string, { day }: Facts): boolean =>
  orderDayFrom(supplier, dayNumber(day)) === dayNumber(ordered) || (supplier.takesToday && ordered === day);
