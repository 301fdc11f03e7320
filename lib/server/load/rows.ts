/** Reading rows: one statement for any number of cars and for the shop, so that what it gives is of one moment. */
import 'server-only';
import type { CarTable } from '@/lib/domain/car/rows';
import { CAR_TABLES } from '@/lib/domain/car/rows';
import { fromRows } from '@/lib/domain/car/codec';
import type { Row } from '@/lib/domain/car/codec';
import type { Car } from '@/lib/domain/car/rows';
import type { ShopRow, ShopTable } from '@/lib/domain/shop/codec';
import { SHOP_TABLES } from '@/lib/domain/shop/codec';
import { Prisma } from '@/prisma/generated/client';
import type { Transaction } from '@/lib/server/database';

/** The tables of a car's maps: where the rulebook says `joints`, the database has `car_joint`. */
export const TABLE_OF: Readonly<Record<CarTable, string>> = {
  operations: 'car_operation',
  joints: 'car_joint',
  checks: 'car_check',
  conditions: 'car_condition',
  stopgaps: 'car_stopgap',
  findings: 'car_finding',
  changes: 'car_change',
  holds: 'car_hold',
  parts: 'car_part',
  photos: 'car_photo',
  signatures: 'car_signature',
  gates: 'car_gate',
  notes: 'car_note',
  assignments: 'car_assignment',
  kits: 'car_kit',
  components: 'car_component',
};

/** What both kinds of client can do. */
export type Reader = Pick<Transaction, '$queryRaw'>;

interface Found {
  readonly car: string;
  readonly table: CarTable | 'car';
  readonly key: string;
  readonly row: unknown;
}

const oneOfCars = (ids: readonly string[]): Prisma.Sql =>
  Prisma.join(
    [
      Prisma.sql`SELECT id AS car, 'car' AS "table", id AS key, row FROM car WHERE id = ANY(${[...ids]})`,
      ...CAR_TABLES.map(
        (table) =>
          Prisma.sql`SELECT car, ${Prisma.raw(`'${table}'`)} AS "table", key, row FROM ${Prisma.raw(TABLE_OF[table])} WHERE car = ANY(${[...ids]})`,
      ),
    ],
    ' UNION ALL ',
  );

/** These cars as they are in the database now; one that is not there is left out. */
export const readCars = async (db: Reader, ids: readonly string[]): Promise<readonly Car[]> => {
  if (ids.length === 0) return [];
  const found = await db.$queryRaw<Found[]>(oneOfCars(ids));
  const rows = new Map<string, Row[]>();
  for (const { car, table, key, row } of found) {
    const list = rows.get(car);
    if (list === undefined) rows.set(car, [{ table, key, row }]);
    else list.push({ table, key, row });
  }
  return [...rows.values()].flatMap((list) => fromRows(list.sort(byKey)) ?? []);
};

/** The maps of a car keep the order in which they were filled; a store has none, so that keys give one. */
const byKey = (a: Row, b: Row): number => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0);

interface FoundShop {
  readonly version: number;
  readonly rows: readonly { table: ShopTable; key: string; nr: number; row: unknown }[] | null;
}

const shopSelect = (table: ShopTable): Prisma.Sql =>
  table === 'tool_suspect'
    ? Prisma.sql`SELECT 'tool_suspect' AS "table", tool AS key, nr, row FROM tool_suspect`
    : Prisma.sql`SELECT ${Prisma.raw(`'${table}'`)} AS "table", id AS key, 0 AS nr, row FROM ${Prisma.raw(table)}`;

/** The shop's rows and the version of its stream, of one moment. */
export const readShopRows = async (
  db: Reader,
): Promise<{ readonly version: number; readonly rows: readonly ShopRow[] }> => {
  const [found] = await db.$queryRaw<FoundShop[]>`
    SELECT (SELECT version FROM stream WHERE id = 'shop') AS version,
      (SELECT json_agg(r ORDER BY r.key, r.nr) FROM (${Prisma.join(SHOP_TABLES.map(shopSelect), ' UNION ALL ')}) r) AS rows`;
  return { version: found?.version ?? 0, rows: found?.rows ?? [] };
};
