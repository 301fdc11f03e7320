/** The week’s order in a file: money as decimal text, days as dates, weekdays by name; every fault at its place. */
import { z } from 'zod';
import { exact, multiply, parseDecimal } from '@/lib/domain/base/exact';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import type { Freight, Offer, OrderProblem, Supplier } from '@/lib/domain/shop/order';
import { readSolveFile } from './solve-file';
import type { FileFault, ValueFault } from './solve-file';

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

const key = z.string().min(1, 'must not be empty');
const count = z.int().min(0, 'must not be below 0').max(1_000_000, 'must not be above 1,000,000');
const packs = z.int().min(1, 'must be at least 1').max(1_000_000, 'must not be above 1,000,000');

const fileSchema = z.strictObject({
  today: z.iso.date('must be a day, like 2026-11-25'),
  lines: z.array(
    z.strictObject({
      key,
      item: key,
      quantity: count,
      needBy: z.iso.date('must be a day, like 2026-12-01'),
      cars: z.array(key).optional(),
      substitutes: z.array(key).optional(),
    }),
  ),
  suppliers: z.array(
    z.strictObject({
      key,
      orderDays: z.array(z.enum(DAYS)),
      takesToday: z.boolean().optional(),
      lead: z.int().min(0, 'must not be below 0').max(3650, 'must not be above ten years'),
      minimum: z.string().optional(),
      freight: z
        .strictObject({
          by: z.enum(['value', 'weight']),
          steps: z.array(z.strictObject({ from: z.string(), fee: z.string() })).min(1, 'must have a step'),
        })
        .optional(),
    }),
  ),
  offers: z.array(
    z.strictObject({
      key,
      supplier: key,
      item: key,
      pack: packs,
      prices: z.array(z.strictObject({ packs, price: z.string() })).min(1, 'must have a price'),
      weight: count.optional(),
    }),
  ),
  pins: z
    .array(
      z.strictObject({
        line: key,
        supplier: key.optional(),
        quantity: count.optional(),
        buyToday: z.boolean().optional(),
        excluded: z.boolean().optional(),
      }),
    )
    .optional(),
});

type OrderFile = z.infer<typeof fileSchema>;

export const readOrderFile = (text: string): Result<OrderProblem, readonly FileFault[]> =>
  readSolveFile<OrderFile, OrderProblem>(text, () => fileSchema, problemOf);

type Say = (sentence: string, ...path: (string | number)[]) => void;

const problemOf = (file: OrderFile): Result<OrderProblem, readonly ValueFault[]> => {
  const faults: ValueFault[] = [];
  const say: Say = (sentence, ...path) => faults.push({ path, sentence });
  checkKeys(file, say);
  const problem: OrderProblem = {
    today: dayOf(file.today),
    lines: file.lines.map(({ needBy, cars = [], substitutes = [], ...line }) => ({
      ...line,
      needBy: dayOf(needBy),
      cars,
      substitutes,
    })),
    offers: file.offers.map((offer, index) =>
      offerOf(offer, (sentence, ...path) => say(sentence, 'offers', index, ...path)),
    ),
    suppliers: file.suppliers.map((supplier, index) =>
      supplierOf(supplier, (sentence, ...path) => say(sentence, 'suppliers', index, ...path)),
    ),
    pins: (file.pins ?? []).map(({ excluded, ...pin }) => ({ ...pin, isExcluded: excluded })),
  };
  return faults.length > 0 ? err(faults) : ok(problem);
};

const DAY = 86_400_000;
const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY;

const checkKeys = ({ lines, suppliers, offers, pins = [] }: OrderFile, say: Say): void => {
  for (const [name, rows] of Object.entries({ lines, suppliers, offers })) {
    const seen = new Set<string>();
    for (const [index, row] of rows.entries()) {
      if (seen.has(row.key))
        say(`“${row.key}” stands there twice. Give each a key of its own.`, name, index, 'key');
      seen.add(row.key);
    }
  }
  const known = new Set(suppliers.map((each) => each.key));
  const lineKeys = new Set(lines.map((each) => each.key));
  for (const [index, { supplier }] of offers.entries())
    if (!known.has(supplier)) say(`There is no supplier “${supplier}”.`, 'offers', index, 'supplier');
  for (const [index, { line, supplier }] of pins.entries()) {
    if (!lineKeys.has(line)) say(`There is no line “${line}”.`, 'pins', index, 'line');
    if (supplier !== undefined && !known.has(supplier))
      say(`There is no supplier “${supplier}”.`, 'pins', index, 'supplier');
  }
};

const money = (text: string, say: Say, ...path: (string | number)[]): number => {
  const minor = multiply(parseDecimal(text) ?? exact(-1), exact(100));
  const isMoney = minor.den === 1n && minor.num >= 0n && minor.num <= 100_000_000_000n;
  if (!isMoney) say(`“${text}” is no amount of money. Write it like 12.50.`, ...path);
  return isMoney ? Number(minor.num) : 0;
};

const offerOf = ({ pack, prices, weight = 0, ...offer }: OrderFile['offers'][number], say: Say): Offer => {
  ascending(
    prices.map((step) => step.packs),
    (sentence, index) => say(sentence, 'prices', index, 'packs'),
  );
  return {
    ...offer,
    packSize: pack,
    steps: prices.map((step, index) => ({
      fromPacks: step.packs,
      price: money(step.price, say, 'prices', index, 'price'),
    })),
    weight,
  };
};

const ascending = (numbers: readonly number[], say: (sentence: string, index: number) => void): void =>
  numbers.forEach((number, index) => {
    if (index > 0 && number <= (numbers[index - 1] ?? 0))
      say('Steps go up: this one is not above the one before.', index);
  });

const supplierOf = (
  { orderDays, minimum, freight, ...supplier }: OrderFile['suppliers'][number],
  say: Say,
): Supplier => ({
  key: supplier.key,
  lead: supplier.lead,
  takesToday: supplier.takesToday ?? false,
  orderDays: orderDays.map((day) => DAYS.indexOf(day) + 1),
  minimumValue: minimum === undefined ? 0 : money(minimum, say, 'minimum'),
  freight: freight === undefined ? { by: 'value', steps: [{ from: 0, fee: 0 }] } : freightOf(freight, say),
});

const freightOf = (
  { by, steps }: NonNullable<OrderFile['suppliers'][number]['freight']>,
  say: Say,
): Freight => {
  const read = steps.map(({ from, fee }, index) => ({
    from: by === 'value' ? money(from, say, 'freight', 'steps', index, 'from') : grams(from, say, index),
    fee: money(fee, say, 'freight', 'steps', index, 'fee'),
  }));
  if (read[0]?.from !== 0)
    say('The first step is from 0, so that every order has its freight.', 'freight', 'steps', 0, 'from');
  ascending(
    read.map(({ from }) => from),
    (sentence, index) => say(sentence, 'freight', 'steps', index, 'from'),
  );
  return { by, steps: read };
};

const grams = (text: string, say: Say, index: number): number => {
  const isWhole = /^\d{1,9}$/.test(text);
  if (!isWhole)
    say(`“${text}” is no weight. Write whole grams, like 2000.`, 'freight', 'steps', index, 'from');
  return isWhole ? Number(text) : 0;
};
