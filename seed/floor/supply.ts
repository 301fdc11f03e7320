/** Who sells to the demo shop, what they ask, and the terms of what it keeps. Suppliers, packs and prices are invented. */
import { readFileSync } from 'node:fs';
import type { Result } from '@/lib/domain/base/result';
import type { ShopClaim } from '@/lib/domain/commands';
import { readItemsFile, readOffersFile } from '@/lib/wire/supply-files';

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
