/** What the page of suppliers and offers is made from. It holds prices: for leads and owners only. */
import type { Freight } from '@/lib/domain/shop/order';

export interface SuppliersView {
  readonly suppliers: readonly SupplierView[];
  readonly items: readonly SoldItem[];
}

export interface SupplierView {
  readonly id: string;
  readonly name: string;
  /** `orders on Wednesday`, `comes after 2 days`. */
  readonly terms: readonly string[];
  readonly offers: number;
  readonly orderDays: readonly number[];
  readonly lead: number;
  readonly takesToday: boolean;
  readonly minimumValue: number;
  readonly freight: Freight;
  readonly mail: string | null;
}

export interface SoldItem {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  /** A plan's item, one of the shop's own, or a part that is bought as a whole. */
  readonly kind: 'planned' | 'own' | 'part';
  /** `minimum 4`, `keeps 24 months`; empty where the shop says nothing. */
  readonly kept: readonly string[];
  readonly terms: ItemTermsView;
  readonly offers: readonly SoldOffer[];
}

/** As they stand in the fields of a form: texts, empty where nothing is said. */
export interface ItemTermsView {
  readonly minimum: string;
  readonly attrition: string;
  readonly shelfMonths: string;
  readonly openedDays: string;
  readonly comesWith: string;
  readonly isPart: string;
  readonly reuse: string;
  readonly trace: 'lot' | 'bulk';
}

export interface SoldOffer {
  readonly id: string;
  readonly supplier: string;
  readonly supplierName: string;
  readonly pack: string;
  /** `£4.20`, with steps `£4.20, from 10 £3.90`. */
  readonly says: string;
  /** As a field holds them. */
  readonly prices: string;
  readonly weight: number;
  readonly number: string;
  /** As a field holds it. */
  readonly deposit: string;
}
