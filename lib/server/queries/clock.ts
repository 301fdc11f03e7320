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

/** Newest versions of a car and of the shop's books; read before what is shown, for the same reason. */
export const versionsOf = async (
  db: Database,
  car: string,
): Promise<{ readonly car: number; readonly shop: number }> => {
  const streams = await db.stream.findMany({
    where: { id: { in: ['shop', `car:${car}`] } },
    select: { id: true, version: true },
  });
  const of = (id: string): number => streams.find((stream) => stream.id === id)?.version ?? 0;
  return { car: of(`car:${car}`), shop: of('shop') };
};
