'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { Claim } from '@/lib/domain/commands';
import type { CsvFault } from '@/lib/wire/csv';
import { AnswerLines } from './answer-lines';
import { useSending } from './use-sending';

export interface ReadFile {
  readonly name: string;
  readonly claim: Claim | null;
  readonly rows: number;
  readonly faults: readonly CsvFault[];
}

interface FileInProps {
  readonly label: string;
  /** What it is called where it is saved. */
  readonly file: string;
  readonly href: string;
  readonly readFile: (name: string, text: string) => ReadFile;
}

/** A book as a file, out and in. A file with one fault is taken in not at all. */
export function FileIn({ label, file, href, readFile }: FileInProps) {
  const sending = useSending();
  const [read, setRead] = useState<ReadFile | null>(null);
  const take = async (chosen: File | undefined): Promise<void> => {
    sending.clear();
    setRead(chosen === undefined ? null : readFile(chosen.name, await chosen.text()));
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
        <a className="btn" href={href} download>
          Save as {file}
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
