/** A file of comma-separated values with a head: read whole, with every fault by its row and column, or not at all. */
import { nearestWord } from '@/lib/domain/base/nearest';
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';
import { readCsv } from './csv';
import type { CsvFault, CsvRow } from './csv';

/** The head, and everything below it. */
type Cell<Column extends string> = (column: Column) => string;
type Say = (column: string, says: string) => void;

/** `claimOf` makes of a row what it claims, and says what of it can’t be read. */
export const readTable = <Column extends string, Claim>(
  text: string,
  columns: readonly Column[],
  required: readonly Column[],
  claimOf: (cell: Cell<Column>, say: Say) => Claim,
): Result<readonly Claim[], readonly CsvFault[]> => {
  const read = readCsv(text);
  if (!read.ok) return read;
  const [head, ...rows] = read.value;
  if (head === undefined || rows.length === 0)
    return err([{ row: 1, column: '', says: 'is all there is: a head and at least one row are needed' }]);
  const faults = headFaults(head, columns, required);
  if (faults.length > 0) return err(faults);
  const claims = rows.map((row) => {
    const cell = (column: Column): string => row.fields[head.fields.indexOf(column)]?.trim() ?? '';
    const say: Say = (column, says) => faults.push({ row: row.row, column, says });
    for (const column of required) if (cell(column) === '') say(column, 'is empty');
    return claimOf(cell, say);
  });
  return faults.length > 0 ? err(faults) : ok(claims);
};

const headFaults = (
  { row, fields }: CsvRow,
  columns: readonly string[],
  required: readonly string[],
): CsvFault[] => [
  ...fields.flatMap((field, index) => {
    const known = columns.includes(field);
    const near = known ? null : nearestWord(field, columns);
    if (known && fields.indexOf(field) === index) return [];
    const says = known
      ? 'stands in the head twice'
      : `is no column here${near === null ? `; there are ${columns.join(', ')}` : `. Did you mean “${near}”?`}`;
    return [{ row, column: field, says }];
  }),
  ...required
    .filter((column) => !fields.includes(column))
    .map((column) => ({ row, column, says: 'is missing from the head' })),
];
