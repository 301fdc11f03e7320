'use client';

import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import type { LogView } from '@/lib/wire/views/log';
import { logAddress } from './log-address';
import { Entry } from './log-entry';
import { LogFilters } from './log-filters';
import './log.css';

interface LogPageProps {
  readonly view: LogView;
}

/** The history of the shop or of one car. Nothing is taken out: what was wrong is struck, what was refused says so. */
export function LogPage({ view }: LogPageProps) {
  const car = view.cars.find(({ id }) => id === view.of);
  return (
    <main className="pg carlog">
      <div className="pagetop">
        <div>
          <h1>Log</h1>
          <p className="dim">
            Nothing is taken out. What was wrong is struck through; what was refused says so; what was heard
            late says when.
          </p>
        </div>
        {car === undefined ? null : (
          <p className="acts">
            <Link className="btn" href={`/cars/${encodeURIComponent(car.id)}`} prefetch={false}>
              Open {car.chassis}
            </Link>
          </p>
        )}
      </div>
      <div className="cols">
        <LogFilters view={view} />
        <section className="sheet main1" aria-labelledby="entries">
          <header>
            <h2 id="entries">
              {car === undefined ? (
                view.of === 'shop' ? (
                  'The shop’s books'
                ) : (
                  'The whole shop'
                )
              ) : (
                <CarTag chassis={car.chassis} colour={car.colour} />
              )}
            </h2>
            <span className="dim">{countText(view)}</span>
            <span className="end small dim">newest first</span>
          </header>
          {view.days.length === 0 ? <Nothing view={view} /> : null}
          {view.days.map(({ title, lines }) => (
            <div key={title}>
              <h3 className="day">{title}</h3>
              <ol className="log">
                {lines.map((line) => (
                  <Entry key={line.entry.id} line={line} isAmongOthers={view.of === null} />
                ))}
              </ol>
            </div>
          ))}
          <Pages view={view} />
        </section>
      </div>
    </main>
  );
}

const countText = ({ total, shown, page, pages }: LogView): string =>
  pages === 1
    ? `${String(total)} ${total === 1 ? 'entry' : 'entries'}`
    : `${String(total)} entries; ${String(shown)} on page ${String(page)} of ${String(pages)}`;

function Nothing({ view }: LogPageProps) {
  const isAll = view.kind === 'everything' && view.by === null;
  return (
    <div className="none">
      <p>{isAll ? 'Nothing has been said yet.' : 'No entry is of this kind.'}</p>
      {isAll ? null : (
        <p>
          <Link
            className="btn"
            href={logAddress({ kind: 'everything', by: null, of: view.of })}
            prefetch={false}
          >
            Everything
          </Link>
        </p>
      )}
    </div>
  );
}

function Pages({ view }: LogPageProps) {
  const { page, pages, kind, by, of } = view;
  if (pages === 1) return null;
  const to = (other: number): string => logAddress({ kind, by, of, page: other });
  return (
    <nav className="pages" aria-label="Pages of the log">
      {page > 1 ? (
        <Link className="btn" href={to(page - 1)} prefetch={false}>
          Newer
        </Link>
      ) : (
        <span />
      )}
      <span className="num">
        page {page} of {pages}
      </span>
      {page < pages ? (
        <Link className="btn" href={to(page + 1)} prefetch={false}>
          Older
        </Link>
      ) : (
        <span />
      )}
    </nav>
  );
}
