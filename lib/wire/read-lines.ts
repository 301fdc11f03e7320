/**
 * A day's lines, from text to what the player takes: JSON objects `{ now, by, command }`, one to a line, the command
 * written flat. Every fault is told with its line, all at once.
 */
import { z } from 'zod';
import { COMMANDS } from '@/lib/domain/authority';
import { nearestWord } from '@/lib/domain/base/nearest';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import type { Command } from '@/lib/domain/commands';
import type { Line } from '@/lib/domain/play';
import { canonicalJson } from './canonical-json';
import { idSchema, instantSchema } from './claim-words';
import { claimSchema } from './command-schema';
import { lineClock } from './line-clock';
import type { LineClock } from './line-clock';
import { shapeProblems } from './shape-problems';

/** What a line is meant to come to: accepted, refused, or refused for exactly these reasons in any order. */
export type Expectation = 'yes' | 'no' | readonly string[];

export interface ReadLine {
  /** Counted from 1, as editors do. */
  readonly number: number;
  readonly line: Line;
  readonly expect: Expectation;
  /** Who gave the command and what it says, as one text: the same id may come again only with the same body. */
  readonly body: string;
}

export interface LineProblem {
  readonly line: number;
  /** `command.joint`; empty for the line as a whole. */
  readonly path: string;
  readonly sentence: string;
}

interface Options {
  /** The shop's time zone, for times that name none. */
  readonly zone: string;
  /** Hash of the plan that a `start-car` without `plan` means. */
  readonly plan: string;
}

const lineSchema = z.strictObject({
  now: z.string(),
  by: idSchema,
  command: z.looseObject({ type: z.string() }),
  device: idSchema.optional(),
  lastContact: z.string().optional(),
  expect: z.union([z.enum(['yes', 'no']), z.array(z.string()).min(1)]).optional(),
});
type WrittenLine = z.output<typeof lineSchema>;

/** What stands beside the claim's own fields in a flat command. */
const envelopeFields = {
  id: idSchema.optional(),
  doneAt: z.string().optional(),
  override: z
    .strictObject({ code: z.string(), reason: z.string().regex(/\S/, 'must not be empty') })
    .optional(),
  retryOf: idSchema.optional(),
  batch: idSchema.optional(),
};
const envelopeSchema = z.strictObject(envelopeFields);

/** Reads all lines, or tells every fault. Blank lines and those that begin with `#` or `//` are skipped. */
export const readLines = (
  text: string,
  options: Options,
): Result<readonly ReadLine[], readonly LineProblem[]> => {
  const clock = lineClock(options.zone);
  const claims = claimSchema(clock.read);
  const lines: ReadLine[] = [];
  const problems: LineProblem[] = [];
  for (const [index, raw] of text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .entries()) {
    const written = raw.trim();
    if (written === '' || written.startsWith('#') || written.startsWith('//')) continue;
    const number = index + 1;
    const read = readLine(written, number, clock, claims, options);
    if (read.ok) lines.push(read.value);
    else problems.push(...read.error.map((fault) => ({ line: number, ...fault })));
  }
  return problems.length > 0 ? err(problems) : ok(lines);
};

type Fault = Omit<LineProblem, 'line'>;
type Claims = ReturnType<typeof claimSchema>;

const fault = (path: string, sentence: string): Fault => ({ path, sentence });

const readLine = (
  written: string,
  number: number,
  clock: LineClock,
  claims: Claims,
  options: Options,
): Result<ReadLine, readonly Fault[]> => {
  const data = parseJson(written);
  if (!data.ok) {
    clock.lose();
    return err([data.error]);
  }
  const parsed = lineSchema.safeParse(data.value);
  if (!parsed.success) {
    clock.lose();
    const isObject = typeof data.value === 'object' && data.value !== null && !Array.isArray(data.value);
    return err(
      isObject
        ? faultsOf(lineSchema, data.value, parsed.error.issues, '')
        : [fault('', 'A line is an object in braces: {"now": …, "by": …, "command": {"type": …}}.')],
    );
  }
  return fromWritten(parsed.data, number, clock, claims, options);
};

const parseJson = (written: string): Result<unknown, Fault> => {
  try {
    const data: unknown = JSON.parse(written);
    canonicalJson(data);
    return ok(data);
  } catch (error) {
    if (error instanceof SyntaxError) return err(fault('', `This can’t be read as JSON: ${error.message}.`));
    if (error instanceof TypeError) return err(fault('', error.message));
    if (error instanceof RangeError) return err(fault('', 'Brackets are nested too deeply to be read.'));
    throw error;
  }
};

const fromWritten = (
  written: WrittenLine,
  number: number,
  clock: LineClock,
  claims: Claims,
  options: Options,
): Result<ReadLine, readonly Fault[]> => {
  const now = clock.next(written.now);
  const command = readCommand(written.command, `line-${String(number)}`, clock, claims, options);
  const lastContact = written.lastContact === undefined ? undefined : clock.read(written.lastContact);
  const faults = [
    ...(typeof now === 'string' ? [] : now.faults.map((each) => fault('now', each))),
    ...(lastContact === null ? [fault('lastContact', notATime(written.lastContact ?? ''))] : []),
    ...(command.ok ? [] : command.error),
  ];
  if (typeof now !== 'string' || lastContact === null || !command.ok) return err(faults);
  const { by, device, expect = 'yes' } = written;
  return ok({
    number,
    line: {
      now,
      by,
      command: { ...command.value, doneAt: command.value.doneAt ?? now },
      ...(device === undefined ? {} : { device }),
      ...(lastContact === undefined ? {} : { lastContact }),
    },
    expect,
    body: canonicalJson({ by, command: written.command }),
  });
};

const notATime = (text: string): string => `“${text}” is no time. Write it as 2026-11-25T08:00.`;

type ReadCommand = Omit<Command, 'doneAt'> & { readonly doneAt?: string };

const readCommand = (
  written: WrittenLine['command'],
  id: string,
  clock: LineClock,
  claims: Claims,
  options: Options,
): Result<ReadCommand, readonly Fault[]> => {
  const { type } = written;
  const form = claims.options.find(({ shape }) => shape.type.value === type);
  if (form === undefined) return err([fault('command.type', unknownCommand(type))]);
  const isEnvelope = ([field]: [string, unknown]): boolean => Object.hasOwn(envelopeFields, field);
  const fields = Object.entries(type === 'start-car' ? { plan: options.plan, ...written } : written);
  const envelope = envelopeSchema
    .extend({ doneAt: instantSchema(clock.read).optional() })
    .safeParse(Object.fromEntries(fields.filter(isEnvelope)));
  const claim = claims.safeParse(Object.fromEntries(fields.filter((field) => !isEnvelope(field))));
  if (envelope.success && claim.success) return ok({ id, ...envelope.data, claim: claim.data });
  const issues = [...(claim.error?.issues ?? []), ...(envelope.error?.issues ?? [])];
  // For the names that a mistyped field may have meant, claim and envelope are one object, as they are written.
  const flat = z.strictObject({ ...form.shape, ...envelopeFields });
  return err(faultsOf(flat, written, issues, 'command.'));
};

const unknownCommand = (type: string): string => {
  const types = Object.keys(COMMANDS);
  const nearest = nearestWord(type, types);
  return `There is no command “${type}”. ${
    nearest === null ? `Known are ${types.join(', ')}.` : `Did you mean “${nearest}”?`
  }`;
};

const faultsOf = (
  schema: z.ZodType,
  data: unknown,
  issues: readonly z.core.$ZodIssue[],
  under: string,
): readonly Fault[] =>
  shapeProblems(schema, data, issues, () => null).map(({ path, sentence }) =>
    fault(under + path.map((part, at) => (at === 0 ? String(part) : step(part))).join(''), sentence),
  );

const step = (part: string | number): string => (typeof part === 'number' ? `[${String(part)}]` : `.${part}`);
