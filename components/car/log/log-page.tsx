'use client';

import Link from 'next/link';
import type { ReactNode } from 'react';
import { PhotoStrip } from '@/components/photos/photo-strip';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { LogEntry, LogKind, LogView } from '@/lib/wire/views/log';
import './log.css';

interface LogPageProps {
  readonly car: string;
  readonly view: LogView;
}

/** The history of one car. Nothing is taken out: what was wrong is struck through, what was refused says so. */
export function LogPage({ car, view }: LogPageProps) {
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
        <p className="acts">
          <Link className="btn" href={`/cars/${encodeURIComponent(car)}`} prefetch={false}>
            Car
          </Link>
        </p>
      </div>
      <div className="cols">
        <Filters car={car} view={view} />
        <section className="sheet main1" aria-labelledby="entries">
          <header>
            <h2 id="entries">
              <CarTag chassis={view.chassis} colour={view.colour} />
            </h2>
            <span className="dim">{countText(view)}</span>
            <span className="end small dim">newest first</span>
          </header>
          {view.days.length === 0 ? <Nothing car={car} view={view} /> : null}
          {view.days.map(({ title, entries }) => (
            <div key={title}>
              <h3 className="day">{title}</h3>
              <ol className="log">
                {entries.map((entry) => (
                  <Entry key={entry.id} car={car} entry={entry} />
                ))}
              </ol>
            </div>
          ))}
          <Pages car={car} view={view} />
        </section>
      </div>
    </main>
  );
}

export const countText = ({
  total,
  shown,
  page,
  pages,
}: Pick<LogView, 'total' | 'shown' | 'page' | 'pages'>): string =>
  pages === 1
    ? `${String(total)} ${total === 1 ? 'entry' : 'entries'}`
    : `${String(total)} entries; ${String(shown)} on page ${String(page)} of ${String(pages)}`;

function Nothing({ car, view }: LogPageProps) {
  const isAll = view.kind === 'everything' && view.by === null;
  return (
    <div className="none">
      <p>{isAll ? 'Nothing has been said about this car yet.' : 'No entry is of this kind.'}</p>
      {isAll ? null : (
        <p>
          <Link className="btn" href={addressOf(car, {})} prefetch={false}>
            Everything
          </Link>
        </p>
      )}
    </div>
  );
}

interface EntryProps {
  /** Null where it is about the shop's own books. */
  readonly car: string | null;
  readonly entry: LogEntry;
  /** Which car it is about, where more than one is told of. */
  readonly of?: ReactNode;
}

/** One command: what it said, what came of it, who and when. */
export function Entry({ car, entry, of }: EntryProps) {
  const { line, who, brought, note, struck, isRefused, photos = [] } = entry;
  const words = (
    <>
      {line.thing === '' ? null : <b>{line.thing}</b>} {line.says}
    </>
  );
  return (
    <li className={isRefused ? 'ref' : struck === null ? '' : 'str'} id={entry.id}>
      <span className="num tm">{entry.time}</span>
      <Glyph name={struck === null ? line.sign : 'struck'} />
      <div>
        {of}
        <span className="x">{struck === null ? words : <s>{words}</s>}</span>
        {struck === null ? null : <span className="sub">{struck}</span>}
        {brought.length === 0 ? null : (
          <ul className="small dim">
            {brought.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        )}
        <PhotoStrip photos={photos} />
        {isRefused ? <span className="small dim sub">kept as reported, not accepted</span> : null}
        {note === null ? null : <span className="small dim sub">{note}</span>}
      </div>
      {car !== null && entry.kind === 'signatures' && struck === null ? (
        <Link
          className="do"
          href={`/cars/${encodeURIComponent(car)}?strike=${encodeURIComponent(entry.id)}#trouble`}
          prefetch={false}
        >
          Strike<span className="vh">: {line.thing}</span>
        </Link>
      ) : (
        <span />
      )}
      <span className="cellbox">
        <span className="vh">{who.name}</span>
        <span aria-hidden="true">{who.initials}</span>
      </span>
    </li>
  );
}

export const KINDS: readonly (readonly [LogKind | 'everything', string])[] = [
  ['everything', 'everything'],
  ['signatures', 'signatures'],
  ['warnings', 'warnings'],
  ['moves', 'moves'],
  ['refused', 'refused'],
  ['struck', 'struck'],
];

function Filters({ car, view }: LogPageProps) {
  const { kind, by, people, cars } = view;
  return (
    <nav className="filters" aria-label="Filters">
      <section className="fl">
        <h2 className="label">What</h2>
        <p>
          {KINDS.map(([value, says]) => (
            <Choice key={value} isOn={value === kind} href={addressOf(car, { kind: value, by })}>
              {says}
            </Choice>
          ))}
        </p>
      </section>
      <section className="fl">
        <h2 className="label">Who</h2>
        <p>
          <Choice isOn={by === null} href={addressOf(car, { kind, by: null })}>
            anyone
          </Choice>
          {people.map(({ id, name, initials }) => (
            <Choice key={id} isOn={id === by} href={addressOf(car, { kind, by: id })}>
              <span className="vh">{name}</span>
              <span aria-hidden="true" title={name}>
                {initials}
              </span>
            </Choice>
          ))}
        </p>
      </section>
      <section className="sheet of">
        <header>
          <h2>Whose</h2>
        </header>
        <ul>
          {cars.map(({ id, chassis, colour }) => (
            <li key={id} className={id === car ? 'on' : ''}>
              <Link
                href={addressOf(id, { kind, by })}
                aria-current={id === car ? 'page' : undefined}
                prefetch={false}
              >
                <CarTag chassis={chassis} colour={colour} />
              </Link>
            </li>
          ))}
        </ul>
      </section>
    </nav>
  );
}

interface ChoiceProps {
  readonly isOn: boolean;
  readonly href: string;
  readonly children: ReactNode;
}

/** One value of a filter: a link, since what is shown stands in the address. */
export function Choice({ isOn, href, children }: ChoiceProps) {
  return (
    <Link className={isOn ? 'on' : ''} href={href} aria-current={isOn ? 'true' : undefined} prefetch={false}>
      {children}
    </Link>
  );
}

interface Asked {
  readonly kind?: LogKind | 'everything';
  readonly by?: string | null;
  readonly page?: number;
}

/** What is shown stands in the address, so that it can be kept and sent. */
const addressOf = (car: string, { kind = 'everything', by = null, page = 1 }: Asked): string => {
  const query = new URLSearchParams({
    ...(kind === 'everything' ? {} : { kind }),
    ...(by === null ? {} : { by }),
    ...(page === 1 ? {} : { page: String(page) }),
  }).toString();
  return `/cars/${encodeURIComponent(car)}/log${query === '' ? '' : `?${query}`}`;
};

function Pages({ car, view }: LogPageProps) {
  const { page, pages, kind, by } = view;
  if (pages === 1) return null;
  return (
    <nav className="pages" aria-label="Pages of the log">
      {page > 1 ? (
        <Link className="btn" href={addressOf(car, { kind, by, page: page - 1 })} prefetch={false}>
          Newer
        </Link>
      ) : (
        <span />
      )}
      <span className="num">
        page {page} of {pages}
      </span>
      {page < pages ? (
        <Link className="btn" href={addressOf(car, { kind, by, page: page + 1 })} prefetch={false}>
          Older
        </Link>
      ) : (
        <span />
      )}
    </nav>
  );
}
