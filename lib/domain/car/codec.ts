/** Car ↔ rows, generically: one row for each key that was touched. No table is named anywhere else. */
import { CAR_TABLES } from './rows';
import type { Car, CarTable } from './rows';

export interface Row {
  readonly table: CarTable | 'car';
  readonly key: string;
  readonly row: unknown;
}

type Maps = { readonly [Table in CarTable]: Readonly<Record<string, unknown>> };
type Head = Omit<Car, CarTable>;

/** Every row of the car, its own first. Only touched keys have one. */
export const toRows = (car: Car): readonly Row[] => {
  const maps: Maps = car;
  const head: Head = headOf(car);
  return [
    { table: 'car', key: car.id, row: head },
    ...CAR_TABLES.flatMap((table) =>
      Object.entries(maps[table]).map(([key, row]): Row => ({ table, key, row })),
    ),
  ];
};

const headOf = ({ id, chassis, colour, plan, options, donor, stage, delivered, version }: Car): Head => ({
  id,
  chassis,
  colour,
  plan,
  options,
  ...(donor === undefined ? {} : { donor }),
  stage,
  delivered,
  version,
});

/** The car that these rows are of; null where the car's own row is missing. Inverse of `toRows`. */
export const fromRows = (rows: readonly Row[]): Car | null => {
  const head = rows.find((row) => row.table === 'car');
  if (head === undefined) return null;
  const maps = Object.fromEntries(
    CAR_TABLES.map((table) => [
      table,
      Object.fromEntries(rows.filter((row) => row.table === table).map(({ key, row }) => [key, row])),
    ]),
  );
  // Rows come from `toRows` through a store that keeps them as they are; a store that doesn't is found by the log.
  return { ...(head.row as Head), ...(maps as unknown as Pick<Car, CarTable>) };
};

const NOTHING: Readonly<Record<string, unknown>> = {};

export interface RowDelta {
  readonly put: readonly Row[];
  readonly drop: readonly { readonly table: CarTable; readonly key: string }[];
}

/** What changed between two states of one car: a row is the same only if it is the same object. */
export const rowDelta = (before: Car | null, after: Car): RowDelta => {
  const old: Maps | null = before;
  const now: Maps = after;
  const put: Row[] = [{ table: 'car', key: after.id, row: headOf(after) }];
  const drop: { table: CarTable; key: string }[] = [];
  for (const table of CAR_TABLES) {
    const [was, is] = [old?.[table] ?? NOTHING, now[table]];
    if (was === is) continue;
    // By keys: a car has hundreds of rows in a table, and a command touches two of them.
    for (const key of Object.keys(is)) if (was[key] !== is[key]) put.push({ table, key, row: is[key] });
    for (const key of Object.keys(was)) if (is[key] === undefined) drop.push({ table, key });
  }
  return { put, drop };
};
