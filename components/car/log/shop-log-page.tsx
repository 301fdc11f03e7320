'use client';

import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import type { LogKind, ShopLogView } from '@/lib/wire/views/log';
import { Choice, countText, Entry, KINDS } from './log-page';
import './log.css';

/** The history of every car and of the shop's own books, the refused and the struck with the rest. */
export function ShopLogPage({ view }: { readonly view: ShopLogView }) {
  return (
    <main className="pg carlog">
      <div className="pagetop">
        <div>
          <h1>Log</h1>
          <p className="dim">
            Every car and the shop’s books. Nothing is taken out: what was wrong is struck through; what was
            refused says so.
          </p>
        </div>
      </div>
      <div className="cols">
        <Filters view={view} />
        <section className="sheet main1" aria-labelledby="entries">
          <header>
            <h2 id="entries">{titleOf(view)}</h2>
            <span className="dim">{countText(view)}</span>
            <span className="end small dim">newest first</span>
          </header>
          {view.days.length === 0 ? (
            <div className="none">
              <p>No entry is of this kind.</p>
              <p>
                <Link className="btn" href="/log" prefetch={false}>
                  Everything
                </Link>
              </p>
            </div>
          ) : null}
          {view.days.map(({ title, entries }) => (
            <div key={title}>
              <h3 className="day">{title}</h3>
              <ol className="log">
                {entries.map(({ entry, car }) => (
                  <Entry
                    key={entry.id}
                    car={car?.id ?? null}
                    entry={entry}
                    of={
                      car === null ? (
                        <span className="small dim sub">The shop’s books</span>
                      ) : (
                        <span className="small sub">
                          <CarTag chassis={car.chassis} colour={car.colour} />
                        </span>
                      )
                    }
                  />
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

const titleOf = ({ of, cars }: ShopLogView): string =>
  of === null
    ? 'The whole shop'
    : of === 'shop'
      ? 'The shop’s books'
      : (cars.find(({ id }) => id === of)?.chassis ?? of);

function Filters({ view }: { readonly view: ShopLogView }) {
  const { kind, by, of, people, cars } = view;
  return (
    <nav className="filters" aria-label="Filters">
      <section className="fl">
        <h2 className="label">What</h2>
        <p>
          {KINDS.map(([value, says]) => (
            <Choice key={value} isOn={value === kind} href={addressOf({ kind: value, by, of })}>
              {says}
            </Choice>
          ))}
        </p>
      </section>
      <section className="fl">
        <h2 className="label">Who</h2>
        <p>
          <Choice isOn={by === null} href={addressOf({ kind, by: null, of })}>
            anyone
          </Choice>
          {people.map(({ id, name, initials }) => (
            <Choice key={id} isOn={id === by} href={addressOf({ kind, by: id, of })}>
              <span className="vh">{name}</span>
              <span aria-hidden="true" title={name}>
                {initials}
              </span>
            </Choice>
          ))}
        </p>
      </section>
      <section className="fl">
        <h2 className="label">Whose</h2>
        <p>
          <Choice isOn={of === null} href={addressOf({ kind, by, of: null })}>
            everything
          </Choice>
          <Choice isOn={of === 'shop'} href={addressOf({ kind, by, of: 'shop' })}>
            the books
          </Choice>
          {cars.map(({ id, chassis }) => (
            <Choice key={id} isOn={id === of} href={addressOf({ kind, by, of: id })}>
              {chassis}
            </Choice>
          ))}
        </p>
      </section>
    </nav>
  );
}

interface Asked {
  readonly kind: LogKind | 'everything';
  readonly by: string | null;
  readonly of: string | null;
  readonly page?: number;
}

const addressOf = ({ kind, by, of, page = 1 }: Asked): string => {
  const query = new URLSearchParams({
    ...(kind === 'everything' ? {} : { kind }),
    ...(by === null ? {} : { by }),
    ...(of === null ? {} : { of }),
    ...(page === 1 ? {} : { page: String(page) }),
  }).toString();
  return query === '' ? '/log' : `/log?${query}`;
};

function Pages({ view }: { readonly view: ShopLogView }) {
  const { page, pages, kind, by, of } = view;
  if (pages === 1) return null;
  const to = (other: number): string => addressOf({ kind, by, of, page: other });
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
