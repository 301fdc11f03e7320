/** What is on the shelf: read each time, since every car's work changes it and no version tells. */
import 'server-only';
import type { Stock, StockRow } from '@/lib/domain/shop/stock';
import type { Reader } from './rows';

export const loadStock = async (db: Reader): Promise<Stock> =>
  stockOf(await db.$queryRaw<Found[]>`SELECT id, row FROM stock ORDER BY id`);

/** Of these places only; under the shop's lock nobody changes them meanwhile. */
export const readStock = async (db: Reader, keys: readonly string[]): Promise<Stock> =>
  stockOf(await db.$queryRaw<Found[]>`SELECT id, row FROM stock WHERE id = ANY(${[...keys]})`);

interface Found {
  readonly id: string;
  readonly row: StockRow;
}

const stockOf = (rows: readonly Found[]): Stock => Object.fromEntries(rows.map(({ id, row }) => [id, row]));
