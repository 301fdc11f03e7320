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

export const stockClaims = [
  z.strictObject({ type: z.literal('receive-stock'), item: idSchema, quantity }),
  z.strictObject({ type: z.literal('count-stock'), ...place, counted: figure }),
  z.strictObject({
    type: z.literal('draw-stock'),
    ...place,
    quantity,
    reason: z.enum(OUT_REASONS),
    forCar: idSchema.optional(),
  }),
  z.strictObject({ type: z.literal('put-back'), ...place, quantity }),
  z.strictObject({ type: z.literal('put-away'), ...place, bin: figure }),
] as const;
