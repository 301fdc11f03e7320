/**
 * The shop's catalogue: what can be bought, put in a bin and fitted. A plan names items by the same keys and says how they
 * are used; what the shop knows beyond that (how long they keep, what comes in the box, how many it never wants to be
 * without) stands here.
 */
import { ZERO, exact, parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key, Reuse } from '@/lib/domain/base/vocabulary';
import type { ItemEntry, PlanDocument } from '@/lib/domain/plan/document';
import { reuseOf } from '@/lib/domain/plan/reuse';
import { readSize } from './size';
import type { Size } from './size';

/** How long it keeps. */
export interface Shelf {
  /** Closed, in months from the day it was made or received. */
  readonly months: number | null;
  /** Opened, in days. */
  readonly openedDays: number | null;
}

export interface CatalogueItem {
  readonly key: Key;
  readonly name: string;
  /** Read from its name; null for what is no bolt, nut, washer or pin. Grade, class and finish stand in it. */
  readonly size: Size | null;
  /** What one of it is: `pc`, `m`, `kit`, `0.5 l bottle`. */
  readonly unit: string;
  /** When a fitted one is spent. */
  readonly reuse: Reuse;
  /** By lot where it matters (critical joints, fluids); in bulk it is counted by bin. */
  readonly trace: 'lot' | 'bulk';
  readonly shelf: Shelf | null;
  /** What lies in the box of one of it. */
  readonly comesWith: Readonly<Record<Key, number>>;
  /** The shop never wants fewer than this; zero = buys for cars only. */
  readonly minimum: Exact;
  /** Share of what is used that gets lost: for bulk only. */
  readonly attrition: Exact;
  /** The part of the plan that this is when it is bought: then the part is not bought once more beside it. */
  readonly isPart: Key | null;
}

export type Catalogue = Readonly<Record<Key, CatalogueItem>>;

/** What the shop says of an item over and above what a plan says. */
export type ItemTerms = Partial<
  Pick<CatalogueItem, 'shelf' | 'comesWith' | 'minimum' | 'attrition' | 'isPart'>
>;

/** An item as its plan has it, with the shop's own terms. */
export const itemFrom = (key: Key, entry: ItemEntry, terms: ItemTerms = {}): CatalogueItem => {
  const size = readSize(entry.name);
  return {
    key,
    name: entry.name,
    size: size.ok ? size.value : null,
    unit: entry.unit ?? 'pc',
    reuse: reuseOf({ [key]: entry }, key),
    trace: entry.trace ?? 'bulk',
    shelf: null,
    comesWith: {},
    minimum: ZERO,
    attrition: ZERO,
    isPart: null,
    ...terms,
  };
};

/** The items of these plans; where two name the same key, the first one's words stand. */
export const catalogueOf = (
  documents: readonly PlanDocument[],
  terms: Readonly<Record<Key, ItemTerms>> = {},
): Catalogue => {
  const found: Record<Key, CatalogueItem> = {};
  for (const { items = {} } of documents)
    for (const [key, entry] of Object.entries(items)) found[key] ??= itemFrom(key, entry, terms[key]);
  return found;
};

const MEASURED = /^(?:m|mm|cm|l|ml|kg|g)$/u;

/** Bought one by one or by measure: half a bolt can't be bought, half a metre of hose can. */
export const isCounted = (unit: string): boolean => !MEASURED.test(unit);

/** What must be bought to have so much: whole pieces of what is counted. */
export const roundedUp = (quantity: Exact, unit: string): Exact => {
  if (!isCounted(unit) || quantity.den === 1n) return quantity;
  const whole = quantity.num / quantity.den;
  return exact(quantity.num > 0n ? whole + 1n : whole);
};

/** `6.41 m`, `14`, `0.5`: how a plan writes how much an operation uses up. Null where it can't be read. */
export const parseQuantity = (text: string | number): Exact | null => {
  const [, size = ''] = /^\s*([\d.,]+)\s*\S*\s*$/u.exec(String(text)) ?? [];
  return parseDecimal(size);
};
