/** A stocktake as a file: out with what the books have, in with what was counted. Rows that nobody counted stay empty. */
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import type { Counted } from '@/lib/domain/stock-claims';
import { writeCsv } from './csv';
import type { CsvFault } from './csv';
import { readTable } from './table-file';

const COLUMNS = ['bin', 'item', 'name', 'lot', 'books', 'counted'] as const;

export interface CountRow {
  readonly bin: string;
  readonly item: string;
  readonly name: string;
  readonly lot: string;
  readonly books: string;
}

export const writeCountFile = (rows: readonly CountRow[]): string =>
  writeCsv([COLUMNS, ...rows.map(({ bin, item, name, lot, books }) => [bin, item, name, lot, books, ''])]);

/** Only rows with a count; none at all is a fault. */
export const readCountFile = (text: string): Result<readonly Counted[], readonly CsvFault[]> => {
  const read = readTable(text, COLUMNS, ['item'], (cell, say): Counted | null => {
    const counted = cell('counted');
    if (counted === '') return null;
    const value = parseDecimal(counted);
    if (value === null || compare(value, ZERO) < 0)
      say('counted', `“${counted}” is no count; write a number, 0 or more`);
    const lot = cell('lot');
    return { item: cell('item'), ...(lot === '' ? {} : { lot }), counted };
  });
  if (!read.ok) return read;
  const counts = read.value.filter((row) => row !== null);
  return counts.length === 0
    ? err([{ row: 1, column: 'counted', says: 'is empty in every row' }])
    : ok(counts);
};
