/** The last statement of a command: events, rows, the stream's head and the answer, all or nothing. */
import 'server-only';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Command } from '@/lib/domain/commands';
import type { Event } from '@/lib/domain/events';
import type { World } from '@/lib/domain/world';
import { Prisma } from '@/prisma/generated/client';
import type { Transaction } from '@/lib/server/database';
import type { RunAnswer } from '@/lib/server/given';
import { entriesOf } from '@/lib/server/log/chain';
import { carRows, shopRows, toolUse } from './rows';
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

/** Writes what happened and the answer; gives the stream's new version. */
export const writeAccepted = async (tx: Transaction, command: string, effect: Effect): Promise<number> => {
  const { stream, car, locked } = effect;
  const entries = entriesOf(stream, { version: locked.version, hash: locked.head }, effect.events);
  const last = entries.at(-1);
  const version = last?.version ?? locked.version;
  const answer = JSON.stringify({ car, version });
  const answered = Prisma.sql`UPDATE command SET outcome = 'accepted', answer = ${answer}::jsonb WHERE id = ${command}`;
  if (last === undefined) {
    // Stopping what does not run is accepted and changes nothing.
    await tx.$executeRaw(answered);
    return version;
  }
  const pieces = [
    answered,
    locked.isNew
      ? Prisma.sql`INSERT INTO stream (id, version, head) VALUES (${stream}, ${version}, ${last.hash})`
      : Prisma.sql`UPDATE stream SET version = ${version}, head = ${last.hash} WHERE id = ${stream}`,
    Prisma.sql`INSERT INTO event (stream, version, type, command, at, body, previous, hash)
      SELECT stream, version, type, command, at, body, previous, hash
      FROM json_to_recordset(${JSON.stringify(entries)}::json)
        AS e (stream text, version int, type text, command text, at timestamptz, body text, previous text, hash text)
      ORDER BY version`,
    ...rowsOf(effect),
  ];
  const parts = pieces.map((piece, at) => Prisma.sql`${Prisma.raw(`w${String(at)}`)} AS (${piece})`);
  const told = JSON.stringify({ stream, version });
  await tx.$executeRaw`WITH ${Prisma.join(parts, ', ')} SELECT pg_notify(${CHANNEL}, ${told})`;
  return version;
};

const rowsOf = ({ car, events, before, after }: Effect): readonly Prisma.Sql[] => {
  if (car === null) return shopRows(before.shop, after.shop);
  const now = after.cars[car];
  return [...(now === undefined ? [] : carRows(before.cars[car] ?? null, now)), ...usesOf(events)];
};

/** Two pieces of one statement can't change the same row: the uses of a tool are added up first. */
const usesOf = (events: readonly Event[]): readonly Prisma.Sql[] => {
  const uses = new Map<string, number>();
  for (const event of events)
    if (event.type === 'joint-marked' && event.toolUse !== null)
      uses.set(event.toolUse.tool, (uses.get(event.toolUse.tool) ?? 0) + event.toolUse.cycles);
  return [...uses].map(([tool, cycles]) => toolUse(tool, cycles));
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
