/** The shape of what is said about photographs, for whatever comes from outside. */
import { z } from 'zod';
import { MOST_ORIGINAL, MOST_PHOTOS, PHOTO_TYPES } from './photos';
import type { PhotoSent } from './photos';

export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/, 'is no SHA-256 in small hexadecimal');

/** Those that were taken with an act. */
export const photosSchema = z.array(sha256Schema).max(MOST_PHOTOS);

/** Of a query, where everything is text. */
export const photoSentSchema = z.strictObject({
  car: z.string().min(1).max(200),
  sha256: sha256Schema,
  bytes: z
    .string()
    .regex(/^[1-9]\d{0,9}$/, 'is no number of bytes')
    .transform(Number)
    .refine((bytes) => bytes <= MOST_ORIGINAL, 'is longer than a photograph may be'),
  type: z.enum(PHOTO_TYPES),
  copy: sha256Schema,
}) satisfies z.ZodType<PhotoSent>;
