/** The first statement of a command: its id is claimed and its stream locked, before anything is read. */
import 'server-only';
import { createHash } from 'node:crypto';
import { COMMANDS } from '@/lib/domain/authority';
import type { Command } from '@/lib/domain/commands';
import { canonicalJson } from '@/lib/wire/canonical-json';
import type { Transaction } from '@/lib/server/database';
import type { Given } from '@/lib/server/given';

/** Two requests with the same id are the same only if this is: what is claimed, who signs, on which device (D3). */
export const bodyHash = ({ command, actor, device }: Pick<Given, 'command' | 'actor' | 'device'>): string =>
  createHash('sha256')
    .update(canonicalJson({ command: JSON.parse(JSON.stringify(command)) as unknown, actor, device }), 'utf8')
    .digest('hex');

export const carOf = ({ claim }: Command): string | null => ('car' in claim ? claim.car : null);

/** The stream that the command's events would belong to. */
export const streamFor = (command: Command): string =>
  COMMANDS[command.claim.type].stream === 'shop' ? 'shop' : `car:${carOf(command) ?? ''}`;

/** Where the stream stood when it was locked; `isNew`: nobody has begun it. */
export interface Locked {
  readonly version: number;
  readonly head: string;
  readonly isNew: boolean;
}

/**
 * Claims the id and locks the stream, and after it the rooms of stages (`rooms`), which have no row of their own; or answers null where the id was claimed before. A twin that comes while the
 * first is still at work waits here until that has its answer (D5). All in one statement: the locks are taken while its
 * row is made, in that order.
 */
export const claim = async (
  tx: Transaction,
  given: Given,
  hash: string,
  rooms: readonly string[],
): Promise<Locked | null> => {
  const { command, actor, present, device, now } = given;
  const stream = streamFor(command);
  const [found] = await tx.$queryRaw<{ version: number | null; head: string | null }[]>`
    WITH claimed AS (
      INSERT INTO command (id, body_hash, actor, present, device, type, car, received_at)
      VALUES (${command.id}, ${hash}, ${actor}, ${present}, ${device}, ${command.claim.type}, ${carOf(command)},
        ${now}::timestamptz)
      ON CONFLICT (id) DO NOTHING
      RETURNING id
    )
    SELECT s.version, s.head,
      (SELECT count(pg_advisory_xact_lock(hashtextextended(room, 0))) FROM unnest(${[...rooms]}::text[]) room
        WHERE claimed.id IS NOT NULL) AS rooms
    FROM claimed LEFT JOIN LATERAL (
      SELECT version, head FROM stream WHERE id = ${stream} AND claimed.id IS NOT NULL FOR UPDATE
    ) s ON true`;
  if (found === undefined) return null;
  return found.version === null || found.head === null
    ? { version: 0, head: '', isNew: true }
    : { version: found.version, head: found.head, isNew: false };
};
