/** The shape of claims about orders. */
import { z } from 'zod';
import { END_REASONS } from '@/lib/domain/shop/purchase-rows';
import { count, day, figure, idSchema, money, words } from './claim-words';

const is = <Type extends string>(type: Type) => ({ type: z.literal(type) });

const line = z.int().min(0).max(4999);

const approvedLine = z.strictObject({
  offer: idSchema,
  packs: count.max(1_000_000, 'must not be above 1,000,000'),
  price: money,
  cars: z.array(z.strictObject({ car: idSchema.nullable(), quantity: figure })).max(999),
});

const cameIn = z.strictObject({
  line,
  good: figure,
  damaged: figure.optional(),
  wrong: figure.optional(),
  lot: idSchema.optional(),
  certificate: figure.optional(),
  certificateAsked: z.boolean().optional(),
  expires: day.optional(),
});

export const purchaseClaims = [
  z.strictObject({
    ...is('approve-order'),
    first: idSchema,
    orders: z
      .array(
        z.strictObject({
          supplier: idSchema,
          ordered: day,
          freight: money,
          lines: z.array(approvedLine).min(1).max(5000),
        }),
      )
      .min(1)
      .max(100),
  }),
  z.strictObject({
    ...is('receive-order'),
    order: idSchema,
    note: words.max(100, 'this is longer than 100 characters').optional(),
    lines: z.array(cameIn).min(1).max(5000),
  }),
  z.strictObject({ ...is('promise-order'), order: idSchema, due: day }),
  z.strictObject({
    ...is('end-order-line'),
    order: idSchema,
    line: line.optional(),
    why: z.enum(END_REASONS),
  }),
  z.strictObject({
    ...is('credit-order'),
    order: idSchema,
    money: money.min(1, 'must be above 0'),
    isDeposit: z.boolean().optional(),
    why: words.max(500, 'this is longer than 500 characters'),
  }),
  z.strictObject({ ...is('set-rate'), from: day, money }),
] as const;
