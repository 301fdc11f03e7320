/** The shape of claims at the saw. */
import { z } from 'zod';
import { MOST_PIECES } from '@/lib/domain/plan/cut';
import { figure, idSchema, words } from './claim-words';

const piece = z.strictObject({
  car: idSchema,
  piece: words,
  length: figure,
  count: z.int().min(1).max(MOST_PIECES),
});
const pieces = z.array(piece).min(1).max(200);

export const cutClaims = [
  z.strictObject({
    type: z.literal('saw-bars'),
    item: idSchema,
    bars: z
      .array(
        z.strictObject({
          from: z.enum(['rest', 'new']),
          length: figure,
          pieces,
          // Empty says that nothing is kept.
          left: z.union([figure, z.literal('')]).optional(),
        }),
      )
      .min(1)
      .max(200),
  }),
  z.strictObject({ type: z.literal('recut-pieces'), item: idSchema, pieces }),
] as const;
