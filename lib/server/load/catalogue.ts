/** The shop's catalogue, the same object as long as its plans and terms are the same. */
import 'server-only';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { shopCatalogue } from '@/lib/domain/shop/catalogue';
import type { Catalogue } from '@/lib/domain/shop/item';
import type { SupplyRows } from '@/lib/domain/shop/offer-rows';

interface Kept {
  readonly documents: readonly PlanDocument[];
  readonly items: SupplyRows['items'];
  readonly catalogue: Catalogue;
}
let kept: Kept | null = null;

/** What is reckoned of a car is kept as long as its catalogue is the same one. */
export const catalogueFor = (documents: readonly PlanDocument[], items: SupplyRows['items']): Catalogue => {
  const isSame =
    kept?.items === items &&
    kept.documents.length === documents.length &&
    documents.every((each, index) => each === kept?.documents[index]);
  if (kept === null || !isSame) kept = { documents, items, catalogue: shopCatalogue(documents, items) };
  return kept.catalogue;
};
