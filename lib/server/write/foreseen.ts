/**
 * A command in one statement: judged beforehand on what this process keeps, and written only if all of it still
 * stands, which is asked under the locks that `claim` takes and in its order. Nearly always it does: a car has one pair
 * of hands on it. Where it doesn't, nothing was done, not even the claim, and the longer way goes from the start.
 */
import 'server-only';
import type { World } from '@/lib/domain/world';
import { Prisma } from '@/prisma/generated/client';
import type { Database } from '@/lib/server/database';
import type { Given } from '@/lib/server/given';
import type { Head } from '@/lib/server/load/kept';
import { named, told, writing } from './answer';
import type { Effect } from './answer';
import { carOf, idLocked, toolOf } from './claim';

/** How many cycles the tool of a claim has, as it was judged; null = none are counted, and nothing of it can change here. */
const cyclesOf = ({ shop }: World, tool: string): number | null => shop.tools[tool]?.cycles?.used ?? null;

/**
 * Writes it, or nothing: then null. A twin waits at the id and then finds it claimed, here or on the longer way.
 * Each step looks at the one before, so that locks are taken in the order in which they stand here; a row that changed
 * while we waited for it is read anew, and no longer is what was foreseen.
 */
export const writeForeseen = async (
  db: Database,
  { command, actor, present, device, now }: Given,
  bodyHash: string,
  effect: Effect,
): Promise<Head | null> => {
  const { stream, locked, before } = effect;
  const tool = toolOf(command);
  const cycles = cyclesOf(before, tool);
  const { head, answer, pieces } = writing(effect, Prisma.sql`EXISTS (SELECT FROM claimed)`);
  const counted = Prisma.sql`, counted AS MATERIALIZED (
      SELECT id FROM tool WHERE id = ${tool} AND used = ${cycles} AND EXISTS (SELECT FROM shop) FOR NO KEY UPDATE
    )`;
  const done = await db.$executeRaw`
    WITH alone AS MATERIALIZED (${idLocked(command)}), own AS MATERIALIZED (
      SELECT id FROM stream WHERE id = ${stream} AND version = ${locked.version} AND head = ${locked.head}
        AND EXISTS (SELECT FROM alone)
      FOR UPDATE
    ), shop AS MATERIALIZED (
      SELECT id FROM stream WHERE id = 'shop' AND version = ${locked.shopVersion} AND EXISTS (SELECT FROM own)
      FOR SHARE
    )${cycles === null ? Prisma.empty : counted}, claimed AS (
      INSERT INTO command (id, body_hash, actor, present, device, type, car, received_at, outcome, answer)
      SELECT ${command.id}, ${bodyHash}, ${actor}, ${present}, ${device}, ${command.claim.type}, ${carOf(command)},
        ${now}::timestamptz, 'accepted', ${answer}::jsonb
      FROM ${cycles === null ? Prisma.sql`shop` : Prisma.sql`counted`}
      ON CONFLICT (id) DO NOTHING
      RETURNING id
    ), ${named(pieces)} SELECT ${told(effect, head)} FROM claimed`;
  return done === 0 ? null : head;
};
