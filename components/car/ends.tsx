'use client';

import { useDesk } from '@/components/act/desk-context';
import { Glyph } from '@/components/ui/glyph';
import type { EndGroup, RowView } from '@/lib/wire/views/car';
import { laterId } from '@/lib/wire/views/said-line';
import { Fold } from './fold';
import { Row } from './row';

interface EndsProps {
  readonly groups: readonly EndGroup[];
  readonly says: string;
}

/** Every open promise on the car, the gravest kinds first. */
export function Ends({ groups, says }: EndsProps) {
  return (
    <section className="sheet loose" aria-labelledby="loose">
      <header>
        <h2 id="loose" tabIndex={-1}>
          Loose ends
        </h2>
        <span className="dim says">{says}</span>
        <span className="end small dim">who keeps it, by which gate</span>
      </header>
      <ToldLine />
      {groups.length === 0 ? (
        <div className="none">
          <Glyph name="verified" size={32} />
          <div>
            <h3>No loose ends</h3>
            <p>Whatever was begun on this car is settled. What comes next stands below, under Work.</p>
          </div>
        </div>
      ) : (
        groups.map(({ kind, title, rows, folded }) => (
          <div key={kind} className="grp">
            <h3>
              {title} <span>{rows.length}</span>
            </h3>
            <div>
              <Rows rows={rows.slice(0, rows.length - folded)} />
              {folded === 0 ? null : (
                <Fold
                  id={laterId(kind)}
                  title="Asked later"
                  says={gatesOf(rows.slice(-folded))}
                  count={folded}
                >
                  <Rows rows={rows.slice(-folded)} />
                </Fold>
              )}
            </div>
          </div>
        ))
      )}
    </section>
  );
}

function Rows({ rows }: { readonly rows: readonly RowView[] }) {
  return rows.length === 0 ? null : (
    <ul>
      {rows.map((row) => (
        <Row key={row.id} row={row} />
      ))}
    </ul>
  );
}

/** `gate 7`, `gate 7 to delivery`. */
const gatesOf = (rows: readonly RowView[]): string => {
  const gates = [...new Set(rows.flatMap(({ due }) => due?.text ?? []))];
  const [first = ''] = gates;
  return gates.length < 2 ? first : `${first} to ${gates.at(-1)?.replace(/^gate /, '') ?? ''}`;
};

/** What was recorded last, from this screen; it stays until the next. */
function ToldLine() {
  const { told, reading } = useDesk();
  if (told === null) return null;
  return (
    <p className="told">
      <Glyph name="passed" size={20} />
      <span>
        <b>Recorded.</b> {told.text}
      </span>
      <span className="small dim">{reading ? 'the page is read again' : ''}</span>
    </p>
  );
}
