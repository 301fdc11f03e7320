/** The catalogue of a shop: the items of its plans with the shop's own terms, and the items that are the shop's own. */
import { ZERO, divide, exact, parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { catalogueOf, itemFrom } from './item';
import type { Catalogue, ItemTerms } from './item';
import type { ItemRow } from './offer-rows';

/** @example shopCatalogue(documents, shop.items)['BF-4']?.shelf */
export const shopCatalogue = (
  documents: readonly PlanDocument[],
  rows: Readonly<Record<Key, ItemRow>>,
): Catalogue => {
  const terms = Object.fromEntries(Object.values(rows).map((row) => [row.id, termsOf(row)]));
  const planned = catalogueOf(documents, terms);
  const own = Object.values(rows).flatMap(({ id, own: words }) =>
    words === null || planned[id] !== undefined ? [] : [[id, itemFrom(id, words, terms[id])] as const],
  );
  return { ...planned, ...Object.fromEntries(own) };
};

const PERCENT = exact(100n);

const numberIn = (text: string): Exact => parseDecimal(text) ?? ZERO;

const termsOf = ({ shelf, comesWith, minimum, attrition, isPart }: ItemRow): ItemTerms => ({
  shelf,
  comesWith,
  minimum: numberIn(minimum),
  attrition: divide(numberIn(attrition), PERCENT) ?? ZERO,
  isPart,
});
