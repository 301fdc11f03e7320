/** The last statement of a command: events, rows, the stream's head and the answer, all or nothing. */
import 'server-only';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Command } from '@/lib/domain/commands';
import type { Event } from '@/lib/domain/events';
import type { World } from '@/lib/domain/world';
import { Prisma } from '@/prisma/generated/client';
import type { Transaction } from '@/lib/server/database';
import type { RunAnswer } from '@/lib/server/given';
import type { Head } from '@/lib/server/load/kept';
import { entriesOf } from '@/lib/server/log/chain';
import { carRows, shopRows, stockRows, toolUse } from './rows';
import type { Locked } from './claim';

export interface Effect {
  readonly stream: string;
  readonly car: string | null;
  readonly locked: Locked;
  readonly events: readonly Event[];
  readonly before: World;
  readonly after: World;
}

/** Everyone who listens learns which stream has a new version; they read the rest themselves. */
export const CHANNEL = 'slipmark';

/** Writes what happened and the answer; gives where the stream stands then. All locks are held. */
export const writeAccepted = async (tx: Transaction, command: string, effect: Effect): Promise<Head> => {
  const { head, answer, pieces } = writing(effect, Prisma.sql`true`);
  const answered = Prisma.sql`UPDATE command SET outcome = 'accepted', answer = ${answer}::jsonb WHERE id = ${command}`;
  // Stopping what does not run is accepted and changes nothing.
  if (pieces.length === 0) await tx.$executeRaw(answered);
  else await tx.$executeRaw`WITH ${named([answered, ...pieces])} SELECT ${told(effect, head)}`;
  return head;
};

export interface Writing {
  readonly head: Head;
  readonly answer: string;
  /** None where nothing happened. */
  readonly pieces: readonly Prisma.Sql[];
}

/** What has to be written, in pieces of one statement; each does something only `when` that holds. */
export const writing = (effect: Effect, when: Prisma.Sql): Writing => {
  const { stream, car, locked } = effect;
  const before = { version: locked.version, hash: locked.head };
  const entries = entriesOf(stream, before, effect.events);
  const head = entries.at(-1) ?? before;
  const { version, hash } = head;
  const answer = JSON.stringify({ car, version });
  if (entries.length === 0) return { head, answer, pieces: [] };
  const pieces = [
    locked.isNew
      ? Prisma.sql`INSERT INTO stream (id, version, head) SELECT ${stream}, ${version}, ${hash} WHERE ${when}`
      : Prisma.sql`UPDATE stream SET version = ${version}, head = ${hash} WHERE id = ${stream} AND ${when}`,
    Prisma.sql`INSERT INTO event (stream, version, type, command, at, body, previous, hash)
      SELECT stream, version, type, command, at, body, previous, hash
      FROM json_to_recordset(${JSON.stringify(entries)}::json)
        AS e (stream text, version int, type text, command text, at timestamptz, body text, previous text, hash text)
      WHERE ${when} ORDER BY version`,
    ...rowsOf(effect, when),
  ];
  return { head: { version, hash }, answer, pieces };
};

/** Pieces of a WITH. */
export const named = (pieces: readonly Prisma.Sql[]): Prisma.Sql =>
  Prisma.join(
    pieces.map((piece, at) => Prisma.sql`${Prisma.raw(`w${String(at)}`)} AS (${piece})`),
    ', ',
  );

/** The call that tells whoever listens. */
export const told = ({ stream }: Effect, { version }: Head): Prisma.Sql =>
  Prisma.sql`pg_notify(${CHANNEL}, ${JSON.stringify({ stream, version })})`;

const rowsOf = ({ car, events, before, after }: Effect, when: Prisma.Sql): readonly Prisma.Sql[] => {
  const stock = stockRows(events, when);
  if (car === null) return [...shopRows(before.shop, after.shop, when), ...stock];
  const now = after.cars[car];
  return [
    ...(now === undefined ? [] : carRows(before.cars[car] ?? null, now, when)),
    ...usesOf(events, when),
    ...stock,
  ];
};

/** Two pieces of one statement can't change the same row: the uses of a tool are added up first. */
const usesOf = (events: readonly Event[], when: Prisma.Sql): readonly Prisma.Sql[] => {
  const uses = new Map<string, number>();
  for (const event of events)
    if (event.type === 'joint-marked' && event.toolUse !== null)
      uses.set(event.toolUse.tool, (uses.get(event.toolUse.tool) ?? 0) + event.toolUse.cycles);
  return [...uses].map(([tool, cycles]) => toolUse(tool, cycles, when));
};

/** A refusal is an answer too, and stays one: with what was claimed, since no event tells of it. */
export const writeRefused = async (
  tx: Transaction,
  command: Command,
  refusals: readonly Refusal[],
): Promise<void> => {
  const answer = JSON.stringify({ refusals, claim: command.claim });
  await tx.$executeRaw`UPDATE command SET outcome = 'refused', answer = ${answer}::jsonb WHERE id = ${command.id}`;
};

interface Stored {
  readonly body_hash: string;
  readonly outcome: 'accepted' | 'refused' | null;
  readonly answer: { car?: string | null; version?: number; refusals?: readonly Refusal[] } | null;
}

/** What was answered to this id before. The claim waited for it, so that it is there. */
export const storedAnswer = async (tx: Transaction, command: string, hash: string): Promise<RunAnswer> => {
  const [found] = await tx.$queryRaw<
    Stored[]
  >`SELECT body_hash, outcome, answer FROM command WHERE id = ${command}`;
  if (found === undefined || found.body_hash !== hash) return { outcome: 'conflict' };
  if (found.outcome === 'refused')
    return { outcome: 'refused', already: true, refusals: found.answer?.refusals ?? [] };
  return {
    outcome: 'accepted',
    already: true,
    car: found.answer?.car ?? null,
    version: found.answer?.version ?? 0,
  };
};
