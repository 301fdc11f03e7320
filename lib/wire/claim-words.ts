/** The words of claims: names, texts, figures, days and instants as strangers send them. */
import { z } from 'zod';
import { UNITS, parseUnit } from '@/lib/domain/base/units';
import type { Instant } from '@/lib/domain/base/vocabulary';

/** Neither NUL, which the database can't keep, nor half a surrogate pair, which has no canonical bytes. */
const isWriting = (text: string): boolean => !/\0|\p{Surrogate}/u.test(text);

/** A name that rows are kept under. `constructor` and the like stand on every object and would be found there. */
export const idSchema = z
  .string()
  .max(200, 'this is longer than 200 characters')
  .regex(/\S/, 'must not be empty')
  .refine(isWriting, 'holds characters that no text has')
  .refine((text) => !(text in Object.prototype), 'this word can’t be used as a name');

export const words = z
  .string()
  .max(10_000, 'this is longer than 10,000 characters')
  .regex(/\S/, 'must not be empty')
  .refine(isWriting, 'holds characters that no text has');
export const figure = z
  .string()
  .max(100, 'this is longer than 100 characters')
  .refine(isWriting, 'holds characters that no text has');
export const day = z.iso.date('this is no day; write it as 2026-11-25');
export const count = z.int().min(1);
export const fasteners = z.array(count).max(999);
export const texts = z.record(idSchema, figure);
export const ids = z.array(idSchema).optional();

export const unit = z.string().transform((text, context) => {
  const read = parseUnit(text);
  if (read !== null) return read;
  context.addIssue({
    code: 'custom',
    message: `“${text}” is no unit, or could mean two. Known are ${UNITS.join(', ')}; on a plain keyboard Nm, lbf ft, deg`,
  });
  return z.NEVER;
});

/** An instant as people type it; `read` knows the zone of the shop. */
export const instantSchema = (read: (text: string) => Instant | null) =>
  z.string().transform((text, context) => {
    const at = read(text);
    if (at !== null) return at;
    context.addIssue({ code: 'custom', message: `“${text}” is no time; write it as 2026-11-25T08:00` });
    return z.NEVER;
  });

/** Money in its smallest unit, as in every file and row: up to more than any order costs, and far from where whole numbers end. */
export const money = z
  .int()
  .min(0, 'must not be below 0')
  .max(1_000_000_000, 'this is more than 10,000,000.00');
