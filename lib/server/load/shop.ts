/** The shop's rows and settings for whoever reads: pages, the command line. */
import 'server-only';
import { fromShopRows } from '@/lib/domain/shop/codec';
import type { Shop } from '@/lib/domain/shop/rows';
import type { Tool } from '@/lib/domain/torque/tool';
import type { Database } from '@/lib/server/database';
import { keptFor } from './kept';
import type { Kept } from './kept';
import { readShopRows } from './rows';
import type { Reader } from './rows';

/** Reads all of it and keeps it. */
export const readShop = async (db: Reader, kept: Kept): Promise<Shop> => {
  const { version, rows } = await readShopRows(db);
  const shop = fromShopRows(version, rows);
  if (kept.shop === null || kept.shop.version <= version) kept.shop = shop;
  return shop;
};

/**
 * Tools whose cycles are counted change with every use, without a new version of the shop: each use adds to the row
 * and no two cars wait for each other over it. So the row that was just read beats the one that is kept.
 */
export const withTools = (shop: Shop, rows: readonly Omit<Tool, 'suspect'>[]): Shop => {
  const changed = rows.filter(({ id, cycles }) => shop.tools[id]?.cycles?.used !== cycles?.used);
  if (changed.length === 0) return shop;
  const fresh = changed.map(
    (row) => [row.id, { ...row, suspect: shop.tools[row.id]?.suspect ?? [] }] as const,
  );
  return { ...shop, tools: { ...shop.tools, ...Object.fromEntries(fresh) } };
};

/** The shop as it is now: the kept one where its version still holds. */
export const loadShop = async (db: Database): Promise<Shop> => {
  const kept = keptFor(db);
  const [now] = await db.$queryRaw<{ version: number; counted: Omit<Tool, 'suspect'>[] | null }[]>`
    SELECT version, (SELECT json_agg(row) FROM tool WHERE used IS NOT NULL) AS counted FROM stream WHERE id = 'shop'`;
  if (kept.shop === null || kept.shop.version !== now?.version) return readShop(db, kept);
  kept.shop = withTools(kept.shop, now.counted ?? []);
  return kept.shop;
};

export interface Setting {
  readonly name: string;
  /** IANA name of the time zone of its calendar. */
  readonly zone: string;
  readonly demo: boolean;
}

/** Name and calendar. A database without them holds no shop yet: UTC until there is one. */
export const shopSetting = async (db: Database): Promise<Setting> =>
  (await db.shopSetting.findUnique({ where: { id: 1 }, select: { name: true, zone: true, demo: true } })) ?? {
    name: 'Slipmark',
    zone: 'UTC',
    demo: false,
  };
