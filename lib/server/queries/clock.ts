/** Where the whole shop stands, as one number. */
import 'server-only';
import type { Database } from '@/lib/server/database';

/**
 * Sum of the versions of all streams: it rises with everything that happens. Whoever reads it *before* what it is
 * shown with never claims to show more than it does.
 */
export const floorClock = async (db: Database): Promise<number> => {
  const [found] = await db.$queryRaw<{ clock: number }[]>`
    SELECT coalesce(sum(version), 0)::float8 AS clock FROM stream`;
  return found?.clock ?? 0;
};
