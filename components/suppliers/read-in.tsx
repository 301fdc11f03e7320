'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { Claim } from '@/lib/domain/commands';
import type { CsvFault } from '@/lib/wire/csv';
import { readItemsFile, readOffersFile } from '@/lib/wire/supply-files';

type Kind = 'offers' | 'items';

interface Read {
  readonly name: string;
  readonly claim: Claim | null;
  readonly rows: number;
  readonly faults: readonly CsvFault[];
}

/** Below the head. */
const FIRST_ROW = 2;

const readFile = (kind: Kind, name: string, text: string): Read => {
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
        <OneFile kind="offers" label="Offers" />
        <OneFile kind="items" label="Items and their terms" />
      </div>
    </section>
  );
}

function OneFile({ kind, label }: { readonly kind: Kind; readonly label: string }) {
  const sending = useSending();
  const [read, setRead] = useState<Read | null>(null);
  const take = async (file: File | undefined): Promise<void> => {
    sending.clear();
    setRead(file === undefined ? null : readFile(kind, file.name, await file.text()));
  };
  const send = (): void => {
    const claim = read?.claim ?? null;
    if (read === null || claim === null) return;
    void sending.send(claim, `${read.name} is taken in.`, () => setRead(null));
  };
  return (
    <form
      className="one-file"
      onSubmit={(event) => {
        event.preventDefault();
        send();
      }}
    >
      <h3>{label}</h3>
      <p>
        <a className="btn" href={`/api/suppliers/${kind}.csv`} download>
          Save as {kind}.csv
        </a>
      </p>
      <Field
        label="Read in"
        className="file"
        type="file"
        accept=".csv,text/csv"
        onChange={(event) => void take(event.target.files?.[0])}
      />
      {read === null || read.faults.length === 0 ? null : (
        <div className="said bad" role="alert">
          <Glyph name="failed" />
          <ul>
            {read.faults.slice(0, MOST_SHOWN).map(({ row, column, says }, index) => (
              <li key={index}>
                Row {row}
                {column === '' ? '' : `, ${column}`} {says}.
              </li>
            ))}
            {read.faults.length > MOST_SHOWN ? <li>And {read.faults.length - MOST_SHOWN} more.</li> : null}
          </ul>
        </div>
      )}
      <AnswerLines sending={sending} done="All of it is taken in." />
      {read === null || read.claim === null ? null : (
        <Button type="submit" kind="main" held={sending.isBusy}>
          Take in {read.rows} {read.rows === 1 ? 'row' : 'rows'}
        </Button>
      )}
    </form>
  );
}

const MOST_SHOWN = 20;
