'use client';

import { FileIn } from '@/components/set-up/file-in';
import type { ReadFile } from '@/components/set-up/file-in';
import { readCountFile } from '@/lib/wire/count-file';

const readFile = (name: string, text: string): ReadFile => {
  const read = readCountFile(text);
  return read.ok
    ? { name, claim: { type: 'count-stock', counts: read.value }, rows: read.value.length, faults: [] }
    : { name, claim: null, rows: 0, faults: read.error };
};

/** A whole stocktake at once: the list out, the counts in. */
export function CountFile() {
  return (
    <details className="sheet stocktake">
      <summary>
        <b>A whole stocktake</b>
        <span className="small dim">
          the list as a file, out and in; a row without a count stays as it is
        </span>
      </summary>
      <FileIn label="Counts" file="counts.csv" href="/api/stock/counts.csv" readFile={readFile} />
    </details>
  );
}
