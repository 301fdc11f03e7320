/** Rows → SQL, generically: one piece for each table that was touched. No event is named here. */
import 'server-only';
import { rowDelta } from '@/lib/domain/car/codec';
import type { Car, CarTable } from '@/lib/domain/car/rows';
import { CAR_TABLES } from '@/lib/domain/car/rows';
import type { Event } from '@/lib/domain/events';
import { SHOP_TABLES, shopDelta } from '@/lib/domain/shop/codec';
import type { Shop } from '@/lib/domain/shop/rows';
import { stockKey, stockText, summed } from '@/lib/domain/shop/stock';
import { stockHalf } from '@/lib/domain/stock-half';
import { Prisma } from '@/prisma/generated/client';
import { TABLE_OF } from '@/lib/server/load/rows';

const json = (value: unknown): Prisma.Sql => Prisma.sql`${JSON.stringify(value)}::json`;

/** What a command did to its car. Here as below, nothing is written unless `when` holds. */
export const carRows = (before: Car | null, after: Car, when: Prisma.Sql): readonly Prisma.Sql[] => {
  const { put, drop } = rowDelta(before, after);
  return [
    ...put.flatMap(({ table, row }) =>
      table === 'car' ? [putCar(after.id, row, before === null, when)] : [],
    ),
    ...CAR_TABLES.flatMap((table) => {
      const rows = put.flatMap((each) => (each.table === table ? [{ key: each.key, row: each.row }] : []));
      const keys = drop.flatMap((each) => (each.table === table ? [each.key] : []));
      return [
        ...(rows.length === 0 ? [] : [putRows(table, after.id, rows, when)]),
        ...(keys.length === 0 ? [] : [dropRows(table, after.id, keys, when)]),
      ];
    }),
  ];
};

const putCar = (id: string, row: unknown, isNew: boolean, when: Prisma.Sql): Prisma.Sql =>
  isNew
    ? Prisma.sql`INSERT INTO car (id, row) SELECT ${id}, ${json(row)}::jsonb WHERE ${when}`
    : Prisma.sql`UPDATE car SET row = ${json(row)}::jsonb WHERE id = ${id} AND ${when}`;

const putRows = (
  table: CarTable,
  car: string,
  rows: readonly { readonly key: string; readonly row: unknown }[],
  when: Prisma.Sql,
): Prisma.Sql => Prisma.sql`
  INSERT INTO ${Prisma.raw(TABLE_OF[table])} (car, key, row)
  SELECT ${car}, key, row FROM json_to_recordset(${json(rows)}) AS r (key text, row jsonb) WHERE ${when}
  ON CONFLICT (car, key) DO UPDATE SET row = excluded.row`;

const dropRows = (
  table: CarTable,
  car: string,
  keys: readonly string[],
  when: Prisma.Sql,
): Prisma.Sql => Prisma.sql`
  DELETE FROM ${Prisma.raw(TABLE_OF[table])} WHERE car = ${car} AND key = ANY(${[...keys]}) AND ${when}`;

/** What a command did to the shop's books. */
export const shopRows = (before: Shop, after: Shop, when: Prisma.Sql): readonly Prisma.Sql[] => {
  const put = shopDelta(before, after);
  return SHOP_TABLES.flatMap((table) => {
    const rows = put.flatMap((each) =>
      each.table === table ? [{ key: each.key, nr: each.nr, row: each.row }] : [],
    );
    if (rows.length === 0) return [];
    const from = Prisma.sql`FROM json_to_recordset(${json(rows)}) AS r (key text, nr int, row jsonb) WHERE ${when}`;
    return table === 'tool_suspect'
      ? [
          Prisma.sql`INSERT INTO tool_suspect (tool, nr, row) SELECT key, nr, row ${from}
            ON CONFLICT (tool, nr) DO UPDATE SET row = excluded.row`,
        ]
      : [
          Prisma.sql`INSERT INTO ${Prisma.raw(table)} (id, row) SELECT key, row ${from}
            ON CONFLICT (id) DO UPDATE SET row = excluded.row`,
        ];
  });
};

/** The shop's half of a car's events: adds, and never overwrites what another car added. */
export const toolUse = (tool: string, cycles: number, when: Prisma.Sql): Prisma.Sql => Prisma.sql`
  UPDATE tool SET row = jsonb_set(row, '{cycles,used}', to_jsonb(used + ${cycles}::int))
  WHERE id = ${tool} AND used IS NOT NULL AND ${when}`;

/**
 * The stock half of what happened: adds, and never overwrites what another car took. Written in the order of the places'
 * keys, so that no two commands wait for each other.
 */
export const stockRows = (events: readonly Event[], when: Prisma.Sql): readonly Prisma.Sql[] => {
  const changes = summed(events.flatMap(stockHalf)).map(({ item, lot, came, went, counted }) => ({
    id: stockKey({ item, lot }),
    row: { item, lot, came: stockText(came), went: stockText(went), counted },
  }));
  if (changes.length === 0) return [];
  return [
    Prisma.sql`INSERT INTO stock AS s (id, row)
      SELECT id, row FROM json_to_recordset(${json(changes)}) AS r (id text, row jsonb) WHERE ${when} ORDER BY id
      ON CONFLICT (id) DO UPDATE SET row = s.row || jsonb_build_object(
        'came', trim_scale(s.came + (excluded.row ->> 'came')::numeric)::text,
        'went', trim_scale(s.went + (excluded.row ->> 'went')::numeric)::text,
        'counted', CASE WHEN excluded.row ->> 'counted' IS NULL THEN s.row -> 'counted' ELSE excluded.row -> 'counted' END)`,
  ];
};
