/** Needs, suppliers and offers for tests of the week's order. All invented; the day is Wednesday, 25 November 2026. */
import { ZERO, add } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { DatedLine, DemandLine } from '@/lib/domain/shop/demand';
import { catalogueOf } from '@/lib/domain/shop/item';
import type { OfferRow, PinRow, SupplierRow } from '@/lib/domain/shop/offer-rows';
import type { Wanted } from '@/lib/domain/shop/supply';
import type { WeekAsk } from '@/lib/domain/shop/week';

export const document: PlanDocument = {
  plan: 'Corbel',
  revision: '1',
  stages: {},
  items: {
    NUT: { name: 'insert lock nut M10 class 8' },
    PEN: { name: 'slip-mark pen' },
    HOSE: { name: 'fuel hose 8 mm', unit: 'm' },
    M8x25: {
      name: 'bolt M8×1.25×25 8.8 zinc',
      substitutes: {
        M8x30: { condition: 'still clears by 3 mm', notIn: ['J-320'] },
        'M8x25-10': { asksLead: true },
        M10x30: {},
      },
    },
    M8x30: { name: 'bolt M8×1.25×30 8.8 zinc' },
    'M8x25-10': { name: 'bolt M8×1.25×25 10.9 black' },
    M10x30: { name: 'bolt M10×1.5×30 8.8 zinc' },
  },
};
export const catalogue = catalogueOf([document]);

export const supplier = (id: string, lead: number, terms: Partial<SupplierRow> = {}): SupplierRow => ({
  id,
  name: id,
  orderDays: [3],
  lead,
  takesToday: false,
  minimumValue: 0,
  freight: { by: 'value', steps: [{ from: 0, fee: 0 }] },
  mail: null,
  ...terms,
});
export const offer = (seller: string, item: string, packSize: string, price: number): OfferRow => ({
  id: `${seller}/${item}/${packSize}`,
  supplier: seller,
  item,
  packSize,
  steps: [{ fromPacks: 1, price }],
  weight: 0,
  number: null,
  ended: false,
});
const byId = <Row extends { readonly id: string }>(rows: readonly Row[]) =>
  Object.fromEntries(rows.map((row) => [row.id, row]));

export const wanted = (car: string, by: string, quantity: Exact): Wanted => ({ car, by, quantity });
export const demandFor = (item: string, short: readonly Wanted[], shelf = ZERO, at = 'J-1'): DemandLine => {
  const need = short.reduce((sum, { quantity }) => add(sum, quantity), ZERO);
  const demand = add(need, shelf);
  const lines = short.map(({ car, by, quantity }): DatedLine => ({
    car,
    item,
    what: 'item',
    quantity,
    cause: { kind: 'planned' },
    at,
    before: null,
    due: 0,
    undecided: [],
    by: { day: by, basis: 'plan-minutes', minutesBefore: 0 },
  }));
  const unit = catalogue[item]?.unit ?? 'pc';
  const [first] = short;
  return {
    item,
    what: 'item',
    unit,
    need,
    lines,
    undecided: [],
    allocations: [],
    short,
    minimum: shelf,
    left: ZERO,
    demand,
    buy: demand,
    by: first?.by ?? null,
  };
};

export const ask = (
  demand: readonly DemandLine[],
  offers: readonly OfferRow[],
  {
    suppliers = [supplier('H', 2)],
    pins = [],
    ...more
  }: {
    readonly suppliers?: readonly SupplierRow[];
    readonly pins?: readonly PinRow[];
  } & Partial<Pick<WeekAsk, 'today' | 'buffer'>> = {},
): WeekAsk => ({
  demand,
  catalogue,
  supply: { suppliers: byId(suppliers), offers: byId(offers), pins: byId(pins) },
  planOf: () => document,
  today: '2026-11-25',
  shut: [6, 7],
  buffer: 1,
  ...more,
});
