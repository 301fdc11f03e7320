/** Comma-separated values as RFC 4180 has them: read strictly, so that nothing is guessed, and written back the same. */
import { err, ok } from '@/lib/domain/base/result';
import type { Result } from '@/lib/domain/base/result';

export interface CsvFault {
  /** The head is row 1. */
  readonly row: number;
  /** By its head, or its number; empty for the row as a whole. */
  readonly column: string;
  readonly says: string;
}

export interface CsvRow {
  readonly row: number;
  readonly fields: readonly string[];
}

interface Read {
  readonly field: string;
  /** Where the field ends. */
  readonly at: number;
  readonly fault: string | null;
}

const BOM = '\uFEFF';

/** Every record; line ends may be CRLF or LF, the last one may be missing. A line without anything is no record. */
export const readCsv = (text: string): Result<readonly CsvRow[], readonly CsvFault[]> => {
  const plain = text.startsWith(BOM) ? text.slice(1) : text;
  const rows: CsvRow[] = [];
  const faults: CsvFault[] = [];
  let [at, row] = [0, 1];
  while (at < plain.length) {
    const fields: string[] = [];
    for (let isMore = true; isMore;) {
      const { field, at: end, fault } = readField(plain, at);
      fields.push(field);
      if (fault !== null) faults.push({ row, column: String(fields.length), says: fault });
      at = end;
      isMore = plain[at] === ',';
      if (isMore) at += 1;
    }
    at += plain.startsWith('\r\n', at) ? 2 : 1;
    if (fields.length > 1 || fields[0] !== '') rows.push({ row, fields });
    row += 1;
  }
  const width = rows[0]?.fields.length ?? 0;
  // RFC 4180, 2.4: each line should contain the same number of fields throughout the file.
  for (const each of rows)
    if (each.fields.length !== width)
      faults.push({
        row: each.row,
        column: '',
        says: `has ${String(each.fields.length)} fields, and the head ${String(width)}`,
      });
  return faults.length > 0 ? err(faults) : ok(rows);
};

const isEnd = (text: string, at: number): boolean =>
  at >= text.length || text[at] === ',' || text[at] === '\n' || text.startsWith('\r\n', at);

const readField = (text: string, from: number): Read => {
  if (text[from] === '"') return readQuoted(text, from);
  let at = from;
  while (!isEnd(text, at)) at += 1;
  const field = text.slice(from, at);
  const fault = field.includes('"')
    ? 'a quotation mark stands in a field that does not begin with one'
    : null;
  return { field, at, fault };
};

const readQuoted = (text: string, from: number): Read => {
  let [at, field] = [from + 1, ''];
  for (;;) {
    const close = text.indexOf('"', at);
    if (close < 0) return { field, at: text.length, fault: 'its quotation mark is never closed' };
    field += text.slice(at, close);
    at = close + 1;
    if (text[at] !== '"') break;
    field += '"';
    at += 1;
  }
  const end = at;
  while (!isEnd(text, at)) at += 1;
  return { field, at, fault: at === end ? null : 'something stands behind its closing quotation mark' };
};

/** With CRLF, and quotation marks only where they are needed. */
export const writeCsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((fields) => `${fields.map(quoted).join(',')}\r\n`).join('');

const quoted = (field: string): string =>
  /[",\r\n]/u.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
