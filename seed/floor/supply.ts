/** Who sells to the demo shop, what they ask, and the terms of what it keeps. Suppliers, packs and prices are invented. */
import { readFileSync } from 'node:fs';
import type { Result } from '@/lib/domain/base/result';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import { readItemsFile, readOffersFile } from '@/lib/wire/supply-files';
import { LOT_TOO_SOFT } from './lots';

const WEDNESDAY = 3;

/** Freight up to a value of goods, and none from there on. */
const freeFrom = (fee: number, from: number) =>
  ({
    by: 'value',
    steps: [
      { from: 0, fee },
      { from, fee: 0 },
    ],
  }) as const;

/** In pence, like all money. */
const MINIMUM = 1200;

const SUPPLIERS: readonly ShopClaim[] = [
  {
    type: 'set-supplier',
    supplier: 'thornby',
    name: 'Thornby Fixings',
    orderDays: [WEDNESDAY],
    lead: 2,
    minimumValue: MINIMUM,
    freight: freeFrom(650, 9000),
    mail: 'orders@thornby.example',
  },
  {
    type: 'set-supplier',
    supplier: 'brindle',
    name: 'Brindle Tube & Line',
    orderDays: [WEDNESDAY],
    lead: 4,
    minimumValue: MINIMUM,
    freight: freeFrom(980, 18_000),
    mail: 'counter@brindle.example',
  },
  {
    type: 'set-supplier',
    supplier: 'marrow',
    name: 'Marrow & Finch Motor Factors',
    orderDays: [WEDNESDAY],
    lead: 1,
    takesToday: true,
    minimumValue: MINIMUM,
    freight: freeFrom(420, 6000),
  },
];

/** The first morning's: in the order in which they rest on one another. */
export const openingSupply = (): readonly ShopClaim[] => [
  ...SUPPLIERS,
  { type: 'import-items', items: rowsOf('items.csv', readItemsFile), firstRow: 2 },
  { type: 'import-offers', offers: rowsOf('offers.csv', readOffersFile), firstRow: 2 },
];

const rowsOf = <Row>(
  file: string,
  read: (text: string) => Result<readonly Row[], unknown>,
): readonly Row[] => {
  const rows = read(readFileSync(new URL(`../${file}`, import.meta.url), 'utf8'));
  if (!rows.ok) throw new Error(`seed/${file}: ${JSON.stringify(rows.error)}`);
  return rows.value;
};

/** What is expected for work at other firms, in pence; invented, and two of them nobody has asked for yet. */
const EXPECTED = {
  // Its parts are billed one by one.
  'DN-130': 0,
  'FR-070': 18_500,
  'PR-100': 6000,
  'P-01': 14_500,
  'P-02': 32_000,
  'P-09': 5500,
  'P-11': 4200,
  'P-12': 2500,
  'P-16': 6000,
  'P-19': 8500,
  'P-20': 16_500,
  'P-26': 7000,
  'P-37': 7000,
  'P-40': 21_000,
} as const;
export const outsideQuotes = (plan: string): readonly ShopClaim[] =>
  Object.entries(EXPECTED).map(([key, money]) => ({ type: 'quote-outside', plan, key, money }));

/** What an hour of the shop costs: from the first day, and dearer since midway. Both invented. */
export const hourRate = (from: Day, money: number): ShopClaim => ({ type: 'set-rate', from, money });
export const FIRST_RATE = 3800;
export const LATER_RATE = 4050;

/** Tube nuts for the cream car's lines, ordered on a Wednesday, as their seller takes it. */
export const tubeNuts = (ordered: Day): ShopClaim => ({
  type: 'approve-order',
  first: '1',
  orders: [
    {
      supplier: 'brindle',
      ordered,
      freight: 980,
      lines: [
        { offer: 'brindle/TN-M10/50', packs: 1, price: 1450, cars: [{ car: 'C54-014', quantity: '12' }] },
      ],
    },
  ],
});
export const tubeNutsCome: ShopClaim = {
  type: 'receive-order',
  order: '1',
  note: 'BT 5520',
  lines: [{ line: 0, good: '50', lot: LOT_TOO_SOFT }],
};

/** What was ordered five days ago, on any day as they take it: brake hoses, belts, clamps. */
export const lastOrder = (ordered: Day): ShopClaim => ({
  type: 'approve-order',
  first: '2',
  orders: [
    {
      supplier: 'marrow',
      ordered,
      freight: 420,
      lines: [
        { offer: 'marrow/HB-fr/2', packs: 1, price: 2365, cars: [{ car: 'C54-015', quantity: '2' }] },
        { offer: 'marrow/VB-belt/1', packs: 1, price: 765, cars: [{ car: 'C54-015', quantity: '1' }] },
        { offer: 'marrow/UC-45/10', packs: 1, price: 1875, cars: [{ car: 'C54-014', quantity: '3' }] },
      ],
    },
  ],
});

/** Half of it came, one clamp bent; the hoses are on back order and late. */
export const halfOfIt: ShopClaim = {
  type: 'receive-order',
  order: '2',
  note: 'MF 30417',
  lines: [
    { line: 1, good: '1' },
    { line: 2, good: '9', damaged: '1' },
  ],
};
