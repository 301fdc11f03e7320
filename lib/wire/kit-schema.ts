/** The shape of claims about kits. */
import { z } from 'zod';
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import { KIT_FAULTS } from '@/lib/domain/car/kit-rows';
import { count, figure, idSchema } from './claim-words';

/** A warning may not fail for a figure later, so that it is read here. */
const quantity = figure.refine((text) => {
  const read = parseDecimal(text);
  return read !== null && compare(read, ZERO) > 0;
}, 'must be a number above 0');

const kit = { car: idSchema, operation: idSchema, run: count.optional() };
const lines = z.array(z.strictObject({ item: idSchema, lot: idSchema.optional(), quantity })).max(500);

export const kitClaims = [
  z.strictObject({
    type: z.literal('pick-kit'),
    ...kit,
    lines,
    emptied: z.array(idSchema).max(50).optional(),
  }),
  z.strictObject({ type: z.literal('empty-kit'), ...kit, lines: lines.optional() }),
  z.strictObject({
    type: z.literal('report-kit-line'),
    ...kit,
    item: idSchema,
    lot: idSchema.optional(),
    what: z.enum(KIT_FAULTS),
    quantity: quantity.optional(),
  }),
] as const;
