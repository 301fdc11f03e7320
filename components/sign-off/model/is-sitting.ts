/** Reads a draft that the device kept, perhaps by an earlier version: what is not whole is no sitting. */
import type { Sitting } from './sitting';

const isRecord = (given: unknown): given is Readonly<Record<string, unknown>> =>
  typeof given === 'object' && given !== null && !Array.isArray(given);

export const isSitting = (body: unknown): body is Sitting =>
  isRecord(body) &&
  isRecord(body.given) &&
  Object.values(body.given).every((text) => typeof text === 'string') &&
  typeof body.typed === 'string' &&
  typeof body.unitConfirmed === 'boolean' &&
  Array.isArray(body.over) &&
  Array.isArray(body.hardware) &&
  (body.pending === null || isRecord(body.pending));
