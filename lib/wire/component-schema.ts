/** The shape of claims about components and trips. */
import { z } from 'zod';
import { GRADES, OUTCOMES } from '@/lib/domain/car/component-rows';
import { day, idSchema, money, words } from './claim-words';
import { photosSchema } from './photo-schema';

const is = <Type extends string>(type: Type) => ({ type: z.literal(type) });

const short = z.string().max(60, 'this is longer than 60 characters');
const text = z.string().max(300, 'this is longer than 300 characters');

export const componentClaims = [
  z.strictObject({
    ...is('grade-parts'),
    car: idSchema,
    parts: z
      .array(
        z.strictObject({
          part: idSchema,
          grade: z.enum(GRADES).optional(),
          place: short.optional(),
          serial: short.optional(),
          note: text.optional(),
        }),
      )
      .min(1)
      .max(500),
    photos: photosSchema.optional(),
  }),
  z.strictObject({
    ...is('record-donor'),
    car: idSchema,
    year: short.optional(),
    model: short.optional(),
    number: short.optional(),
    mileage: short.optional(),
    from: text.optional(),
    came: short.optional(),
  }),
  z.strictObject({
    ...is('send-parts'),
    car: idSchema,
    trip: idSchema,
    parts: z
      .array(z.strictObject({ part: idSchema, work: words.max(300, 'this is longer than 300 characters') }))
      .min(1)
      .max(500),
  }),
  z.strictObject({
    ...is('return-parts'),
    car: idSchema,
    trip: idSchema,
    parts: z
      .array(z.strictObject({ part: idSchema, how: z.enum(OUTCOMES), note: text.optional() }))
      .min(1)
      .max(500),
  }),
  z.strictObject({
    ...is('receive-part'),
    car: idSchema,
    part: idSchema,
    from: idSchema.optional(),
    serial: short.optional(),
    looked: text.optional(),
    item: idSchema.optional(),
    lot: idSchema.optional(),
  }),
] as const;

export const tripClaims = [
  z.strictObject({ ...is('open-trip'), trip: idSchema, supplier: idSchema, goes: day, due: day }),
  z.strictObject({ ...is('promise-trip'), trip: idSchema, due: day }),
  z.strictObject({
    ...is('bill-trip'),
    trip: idSchema,
    lines: z.array(z.strictObject({ car: idSchema, part: idSchema, money })).max(500),
    freight: money.optional(),
    note: short.optional(),
  }),
] as const;
