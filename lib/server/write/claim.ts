/** The first statement of a command: its id is claimed, and all is locked that it rests on. */
import 'server-only';
import { createHash } from 'node:crypto';
import { COMMANDS } from '@/lib/domain/authority';
import type { Command } from '@/lib/domain/commands';
import type { Tool } from '@/lib/domain/torque/tool';
import { storedJson } from '@/lib/wire/canonical-json';
import { Prisma } from '@/prisma/generated/client';
import type { Transaction } from '@/lib/server/database';
import type { Given } from '@/lib/server/given';

/** Two requests with the same id are the same only if this is: what is claimed, who signs, on which device (D3). */
export const bodyHash = ({ command, actor, device }: Pick<Given, 'command' | 'actor' | 'device'>): string =>
  createHash('sha256').update(storedJson({ command, actor, device }), 'utf8').digest('hex');

export const carOf = ({ claim }: Command): string | null => ('car' in claim ? claim.car : null);

/** The stream that the command's events would belong to. */
export const streamFor = (command: Command): string =>
  COMMANDS[command.claim.type].stream === 'shop' ? 'shop' : `car:${carOf(command) ?? ''}`;

/** What the lock found. */
export interface Locked {
  /** Where the stream stood; `isNew`: nobody has begun it. */
  readonly version: number;
  readonly head: string;
  readonly isNew: boolean;
  readonly shopVersion: number;
  /** The tool of the claim as it is now, if its cycles are counted. */
  readonly tool: Omit<Tool, 'suspect'> | null;
}

interface Found {
  readonly version: number | null;
  readonly head: string | null;
  readonly shopVersion: number | null;
  readonly tool: Locked['tool'];
}

/**
 * Nothing else with this id is at work until we are through. Whoever goes the short way (`foreseen.ts`) can claim only
 * after the other locks, since a claim can't be taken back; the id is locked first on both ways, so that no two twins
 * wait for each other.
 */
export const idLocked = (command: Command): Prisma.Sql =>
  Prisma.sql`SELECT pg_advisory_xact_lock(hashtextextended(${command.id}, 0))`;

/**
 * Claims the id and locks, in this order: the stream; what has no row of its own (`named`: the room of a stage, a person's clock); the
 * shop, shared, so that nobody removes a person or drops a tool in between; a counted tool, for us alone. Answers null
 * where the id was claimed before. A twin that comes while the first is still at work waits here until that has its
 * answer (D5). All in one statement: a locked row is read as it is once the lock is ours, whatever it was when the
 * statement began, and the locks are taken while its one row is made, from left to right.
 */
export const claim = async (
  tx: Transaction,
  given: Given,
  hash: string,
  named: readonly string[],
): Promise<Locked | null> => {
  const { command, actor, present, device, now } = given;
  const stream = streamFor(command);
  const [found] = await tx.$queryRaw<Found[]>`
    WITH alone AS MATERIALIZED (${idLocked(command)}), claimed AS (
      INSERT INTO command (id, body_hash, actor, present, device, type, car, received_at)
      SELECT ${command.id}, ${hash}, ${actor}, ${present}, ${device}, ${command.claim.type}, ${carOf(command)},
        ${now}::timestamptz
      FROM alone
      ON CONFLICT (id) DO NOTHING
      RETURNING id
    )
    SELECT s.version, s.head,
      (SELECT count(pg_advisory_xact_lock(hashtextextended(each, 0))) FROM unnest(${[...named]}::text[]) each
        WHERE claimed.id IS NOT NULL) AS named,
      (SELECT version FROM stream WHERE id = 'shop' AND claimed.id IS NOT NULL FOR SHARE) AS "shopVersion",
      (SELECT row FROM tool WHERE id = ${toolOf(command)} AND used IS NOT NULL AND claimed.id IS NOT NULL
        FOR NO KEY UPDATE) AS tool
    FROM claimed LEFT JOIN LATERAL (
      SELECT version, head FROM stream WHERE id = ${stream} AND claimed.id IS NOT NULL FOR UPDATE
    ) s ON true`;
  if (found === undefined) return null;
  const { version, head, shopVersion, tool } = found;
  if (shopVersion === null) throw new Error('the shop has no stream: its migrations were not applied');
  return { version: version ?? 0, head: head ?? '', isNew: version === null, shopVersion, tool };
};

/** The tool that the claim names; no tool has an empty name. */
export const toolOf = (command: Command): string =>
  'tool' in command.claim ? (command.claim.tool ?? '') : '';
