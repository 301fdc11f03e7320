/** The shape of claims about stock. */
import { z } from 'zod';
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import { OUT_REASONS } from '@/lib/domain/shop/stock';
import { figure, idSchema } from './claim-words';

/** What went is gone: such a claim may not fail for a figure later, so that it is read here. */
const quantity = figure.refine((text) => {
  const read = parseDecimal(text);
  return read !== null && compare(read, ZERO) > 0;
}, 'must be a number above 0');

const place = { item: idSchema, lot: idSchema.optional() };

const MOST = 2000;

export const stockClaims = [
  z.strictObject({
    type: z.literal('receive-stock'),
    goods: z
      .array(z.strictObject({ item: idSchema, quantity }))
      .min(1)
      .max(MOST),
  }),
  z.strictObject({
    type: z.literal('count-stock'),
    counts: z
      .array(z.strictObject({ ...place, counted: figure }))
      .min(1)
      .max(MOST),
  }),
  z.strictObject({
    type: z.literal('draw-stock'),
    ...place,
    quantity,
    reason: z.enum(OUT_REASONS),
    forCar: idSchema.optional(),
  }),
  z.strictObject({ type: z.literal('put-back'), ...place, quantity }),
  z.strictObject({
    type: z.literal('put-away'),
    places: z
      .array(z.strictObject({ ...place, bin: figure }))
      .min(1)
      .max(MOST),
  }),
  z.strictObject({ type: z.literal('count-remnants'), item: idSchema, lengths: z.array(figure).max(500) }),
] as const;
