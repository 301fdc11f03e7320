/** The shape of claims about buying. */
import { z } from 'zod';
import { count, figure, idSchema, money, words } from './claim-words';

const is = <Type extends string>(type: Type) => ({ type: z.literal(type) });

const grams = z.int().min(0, 'must not be below 0').max(10_000_000, 'this is more than ten tonnes');
const packs = count.max(1_000_000, 'must not be above 1,000,000');
const months = count.max(1200, 'this is longer than a hundred years');
const days = count.max(36_500, 'this is longer than a hundred years');

/** Part of an offer's own name, which is cut at its strokes. */
const supplierId = idSchema
  .max(40, 'this is longer than 40 characters')
  .regex(/^[^/]*$/, 'must not hold a stroke');

const itemTerms = {
  item: idSchema.max(100, 'this is longer than 100 characters'),
  size: words.max(200, 'this is longer than 200 characters').optional(),
  name: words.max(200, 'this is longer than 200 characters').optional(),
  unit: words.max(40, 'this is longer than 40 characters').optional(),
  reuse: figure.optional(),
  trace: z.enum(['lot', 'bulk']).optional(),
  shelfMonths: months.optional(),
  openedDays: days.optional(),
  comesWith: z.record(idSchema, packs).optional(),
  minimum: figure.optional(),
  attrition: figure.optional(),
  isPart: idSchema.optional(),
};

const offer = {
  supplier: supplierId,
  item: idSchema.max(100, 'this is longer than 100 characters'),
  pack: figure,
  prices: z
    .array(z.strictObject({ fromPacks: packs, price: money }))
    .min(1, 'must have a price')
    .max(50),
  weight: grams.optional(),
  deposit: money.optional(),
  number: figure.optional(),
};

const freight = z.strictObject({
  by: z.enum(['value', 'weight']),
  steps: z
    .array(z.strictObject({ from: z.int().min(0).max(1_000_000_000), fee: money }))
    .min(1, 'must have a step')
    .max(50),
});

/** A shop's catalogue, and no more. */
const MOST_ROWS = 5000;
const firstRow = count.optional();

export const supplyClaims = [
  z.strictObject({ ...is('set-item'), ...itemTerms }),
  z.strictObject({
    ...is('set-supplier'),
    supplier: supplierId,
    name: words.max(100, 'this is longer than 100 characters'),
    orderDays: z.array(z.int().min(1).max(7)).max(7),
    lead: z.int().min(0, 'must not be below 0').max(730, 'this is longer than two years'),
    takesToday: z.boolean().optional(),
    minimumValue: money.optional(),
    freight: freight.optional(),
    mail: z.email('this is no e-mail address').max(200).optional(),
  }),
  z.strictObject({ ...is('set-offer'), ...offer }),
  z.strictObject({ ...is('end-offer'), offer: idSchema }),
  z.strictObject({
    ...is('import-items'),
    items: z.array(z.strictObject(itemTerms)).min(1).max(MOST_ROWS),
    firstRow,
  }),
  z.strictObject({
    ...is('import-offers'),
    offers: z.array(z.strictObject(offer)).min(1).max(MOST_ROWS),
    firstRow,
  }),
  z.strictObject({
    ...is('pin-line'),
    item: idSchema,
    supplier: idSchema.optional(),
    quantity: figure.optional(),
    buyToday: z.boolean().optional(),
    exclude: z.boolean().optional(),
  }),
  z.strictObject({ ...is('unpin-line'), item: idSchema }),
  z.strictObject({
    ...is('quote-outside'),
    plan: words.max(200, 'this is longer than 200 characters'),
    key: idSchema,
    money,
  }),
] as const;
