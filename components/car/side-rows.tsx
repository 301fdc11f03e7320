'use client';

import type { RowView } from '@/lib/wire/views/car';
import { Row } from './row';

interface SideRowsProps {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly rows: readonly RowView[];
}

/** A sheet of lines that stand at the side: conditions, options. */
export function SideRows({ id, title, says, rows }: SideRowsProps) {
  if (rows.length === 0) return null;
  return (
    <section className="sheet siderows" aria-labelledby={id}>
      <header>
        <h2 id={id}>{title}</h2>
        <span className="dim says">{says}</span>
      </header>
      <ul>
        {rows.map((row) => (
          <Row key={row.id} row={row} />
        ))}
      </ul>
    </section>
  );
}
