'use client';

import { FileIn } from '@/components/set-up/file-in';
import type { ReadFile } from '@/components/set-up/file-in';
import { readItemsFile, readOffersFile } from '@/lib/wire/supply-files';

type Kind = 'offers' | 'items';

/** Below the head. */
const FIRST_ROW = 2;

const readFile = (kind: Kind, name: string, text: string): ReadFile => {
  if (kind === 'offers') {
    const read = readOffersFile(text);
    return read.ok
      ? {
          name,
          claim: { type: 'import-offers', offers: read.value, firstRow: FIRST_ROW },
          rows: read.value.length,
          faults: [],
        }
      : { name, claim: null, rows: 0, faults: read.error };
  }
  const read = readItemsFile(text);
  return read.ok
    ? {
        name,
        claim: { type: 'import-items', items: read.value, firstRow: FIRST_ROW },
        rows: read.value.length,
        faults: [],
      }
    : { name, claim: null, rows: 0, faults: read.error };
};

/** Both books as files, out and in. A file with one fault is taken in not at all. */
export function ReadIn() {
  return (
    <section className="sheet" aria-labelledby="files">
      <header>
        <h2 id="files">As files</h2>
        <span className="dim">comma-separated; all of a file is taken in, or nothing</span>
      </header>
      <div className="body two">
        <FileIn
          label="Offers"
          file="offers.csv"
          href="/api/suppliers/offers.csv"
          readFile={(name, text) => readFile('offers', name, text)}
        />
        <FileIn
          label="Items and their terms"
          file="items.csv"
          href="/api/suppliers/items.csv"
          readFile={(name, text) => readFile('items', name, text)}
        />
      </div>
    </section>
  );
}
