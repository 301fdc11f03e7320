'use client';

import type { WorkGroup } from '@/lib/wire/views/car';
import { Fold } from './fold';
import { Row } from './row';

/** What may begin, what waits and for what, what must rest. */
export function Work({ groups }: { readonly groups: readonly WorkGroup[] }) {
  return (
    <section className="sheet work" aria-labelledby="work">
      <header>
        <h2 id="work" tabIndex={-1}>
          Work
        </h2>
        <span className="dim says">not begun yet, or at rest: no promise, so no loose end</span>
      </header>
      {groups.length === 0 ? <p className="idle dim">All of the plan’s work is done.</p> : null}
      {groups.map(({ id, title, says, rows }) => (
        <Fold key={id} id={id} title={title} says={says} count={rows.length}>
          <ul>
            {rows.map((row) => (
              <Row key={row.id} row={row} />
            ))}
          </ul>
        </Fold>
      ))}
    </section>
  );
}
