/** What comes in at the command door, from text to command, or every fault by its field. */
import { z } from 'zod';
import { COMMANDS } from '@/lib/domain/authority';
import { nearestWord } from '@/lib/domain/base/nearest';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import { idSchema } from './claim-words';
import { claimSchema } from './command-schema';
import type { DoorAnswer, DoorRequest } from './door';
import { readInstant } from './shop-day';
import { shapeProblems } from './shape-problems';
import { strictJson } from './strict-json';

export type FieldFault = Extract<DoorAnswer, { outcome: 'bad-input' }>['fields'][number];

const uuid = z.uuid('must be a UUID, made on the device before the first try');
const instant = z.iso.datetime({
  precision: 3,
  error: 'must be a time in UTC with milliseconds, 2026-11-25T08:00:00.000Z',
});

const reason = z
  .string()
  .max(10_000, 'this is longer than 10,000 characters')
  .regex(/\S/, 'must not be empty')
  .refine((text) => !text.includes('\0'), 'holds characters that no text has');

const envelope = {
  id: uuid,
  doneAt: instant,
  override: z.strictObject({ code: idSchema, reason }).optional(),
  retryOf: uuid.optional(),
  batch: idSchema.optional(),
};

const PIN = z.string().regex(/^\d{6}$/, 'must be six figures');

const doorSchema = (zone: string) => {
  const claims = claimSchema(readInstant(zone));
  const around = <Claim extends z.ZodType>(claim: Claim) =>
    z.strictObject({
      command: z.strictObject({ ...envelope, claim }),
      sequence: z.int().min(0).optional(),
      signer: z.strictObject({ person: idSchema, pin: PIN }).optional(),
    });
  return {
    whole: around(claims),
    /** With the one form that the type names, so that a fault is told of that form only. */
    forType: (type: string) => {
      const form = claims.options.find(({ shape }) => shape.type.value === type);
      return form === undefined ? null : around(form);
    },
  };
};

const schemas = new Map<string, ReturnType<typeof doorSchema>>();

/** Building all forms takes longer than reading a command: once for each zone, of which a shop has one. */
const schemaFor = (zone: string): ReturnType<typeof doorSchema> => {
  const before = schemas.get(zone);
  if (before !== undefined) return before;
  const made = doorSchema(zone);
  schemas.set(zone, made);
  return made;
};

/** Reads a request. `zone`: the shop's, for a time that names none. */
export const readDoorRequest = (text: string, zone: string): Result<DoorRequest, readonly FieldFault[]> => {
  const json = strictJson(text);
  if (!json.ok) return err([{ field: '', says: json.error }]);
  const { whole, forType } = schemaFor(zone);
  const read = whole.safeParse(json.value);
  if (read.success) return ok(read.data);
  const type = typeIn(json.value);
  const form = type === null ? null : forType(type);
  if (type !== null && form === null)
    return err([{ field: 'command.claim.type', says: unknownCommand(type) }]);
  const schema: z.ZodType = form ?? whole;
  const issues = schema.safeParse(json.value).error?.issues ?? read.error.issues;
  return err(
    shapeProblems(schema, json.value, issues, () => null).map(({ path, sentence }) => ({
      field: path
        .map((part, at) => (typeof part === 'number' ? `[${String(part)}]` : at === 0 ? part : `.${part}`))
        .join(''),
      says: sentence,
    })),
  );
};

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const typeIn = (value: unknown): string | null => {
  const claim = isFields(value) && isFields(value['command']) ? value['command']['claim'] : null;
  const type = isFields(claim) ? claim['type'] : null;
  return typeof type === 'string' ? type : null;
};

const unknownCommand = (type: string): string => {
  const nearest = nearestWord(type, Object.keys(COMMANDS));
  return `There is no command “${type}”.${nearest === null ? '' : ` Did you mean “${nearest}”?`}`;
};
