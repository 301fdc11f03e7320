'use client';

import type { RowView } from '@/lib/wire/views/car';
import { Row } from './row';

interface SideRowsProps {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly rows: readonly RowView[];
  /** Said where there is no line. */
  readonly none: string;
}

/** A sheet of lines that stand at the side: conditions, options. */
export function SideRows({ id, title, says, rows, none }: SideRowsProps) {
  return (
    <section className="sheet siderows" aria-labelledby={id}>
      <header>
        <h2 id={id}>{title}</h2>
        <span className="dim says">{says}</span>
      </header>
      {rows.length === 0 ? <p className="idle dim">{none}</p> : null}
      <ul>
        {rows.map((row) => (
          <Row key={row.id} row={row} />
        ))}
      </ul>
    </section>
  );
}
