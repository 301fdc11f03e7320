/** Are the photographs that the log names still there, and the same? Their bytes are hashed again by Postgres. */
import 'server-only';
import type { Event } from '@/lib/domain/events';
import type { Database } from '@/lib/server/database';

/** What is wrong with each, in words. */
export const photoFaults = async (
  db: Database,
  car: string,
  events: readonly Event[],
): Promise<readonly string[]> => {
  const named = events.flatMap((event) =>
    event.type === 'photo-added' && event.copy !== undefined ? [{ hash: event.hash, copy: event.copy }] : [],
  );
  if (named.length === 0) return [];
  const rows = await db.$queryRaw<{ sha256: string; copy: string }[]>`
    SELECT sha256, encode(sha256(copy), 'hex') AS copy FROM photo WHERE car = ${car}`;
  const held = new Map(rows.map(({ sha256, copy }) => [sha256, copy]));
  return named.flatMap(({ hash, copy }) => {
    const now = held.get(hash);
    const which = `the photograph ${hash.slice(0, 12)}`;
    if (now === undefined) return [`${which} is gone`];
    return now === copy ? [] : [`${which} is another picture than the one that was named`];
  });
};
