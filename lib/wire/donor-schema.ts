/** The shape of claims about hardware that came off a donor. */
import { z } from 'zod';
import { figure, idSchema } from './claim-words';

export const donorHardwareClaims = [
  z.strictObject({
    type: z.literal('keep-donor-hardware'),
    donorOf: idSchema,
    lines: z
      .array(
        z.strictObject({
          item: idSchema,
          good: figure,
          lot: idSchema.optional(),
          scrapped: figure.optional(),
          bin: figure.optional(),
        }),
      )
      .min(1)
      .max(500),
  }),
  z.strictObject({ type: z.literal('share-donor-lot'), lot: idSchema }),
] as const;
