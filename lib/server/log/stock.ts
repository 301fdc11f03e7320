/** Is on the shelf what the log tells of? Stock halves stand in all streams; they are sums, so that their order is nobody's matter. */
import 'server-only';
import { summed, withChange } from '@/lib/domain/shop/stock';
import type { Stock, StockChange } from '@/lib/domain/shop/stock';
import type { Database } from '@/lib/server/database';
import { loadStock } from '@/lib/server/load/stock';
import { differences } from './differences';
import type { Fault } from './verify';

export const stockFaults = async (
  db: Database,
  changes: readonly StockChange[],
): Promise<readonly Fault[]> => {
  const told: Stock = summed(changes).reduce(withChange, {});
  const named = (stock: Stock): readonly (readonly [string, unknown])[] =>
    Object.entries(stock).map(([key, row]) => [`stock ${key}`, row]);
  return differences('shop', named(told), named(await loadStock(db)));
};
