'use client';

import type { RowView } from '@/lib/wire/views/car';
import { Fold } from './fold';
import { Row } from './row';

interface FoldedRowsProps {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  /** What the folded list says of itself. */
  readonly fold: string;
  readonly rows: readonly RowView[];
}

/** A sheet with one long list, folded until somebody looks for a line in it. */
export function FoldedRows({ id, title, says, fold, rows }: FoldedRowsProps) {
  if (rows.length === 0) return null;
  return (
    <section className="sheet folded" aria-labelledby={`${id}-head`}>
      <header>
        <h2 id={`${id}-head`}>{title}</h2>
        <span className="dim says">{says}</span>
      </header>
      <Fold id={id} title={fold} says="" count={rows.length}>
        <ul>
          {rows.map((row) => (
            <Row key={row.id} row={row} />
          ))}
        </ul>
      </Fold>
    </section>
  );
}
