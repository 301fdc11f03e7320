/** What is on the shelf: read each time, since every car's work changes it and no version tells. */
import 'server-only';
import type { Stock, StockRow } from '@/lib/domain/shop/stock';
import type { Reader } from './rows';

export const loadStock = async (db: Reader): Promise<Stock> =>
  stockOf(await db.$queryRaw<Found[]>`SELECT id, row FROM stock ORDER BY id`);

/** Of these places only, held until the end of the transaction: nobody changes them meanwhile. In the order in which they are written. */
export const readStock = async (db: Reader, keys: readonly string[]): Promise<Stock> =>
  stockOf(
    await db.$queryRaw<
      Found[]
    >`SELECT id, row FROM stock WHERE id = ANY(${[...keys]}) ORDER BY id FOR NO KEY UPDATE`,
  );

interface Found {
  readonly id: string;
  readonly row: StockRow;
}

const stockOf = (rows: readonly Found[]): Stock => Object.fromEntries(rows.map(({ id, row }) => [id, row]));
