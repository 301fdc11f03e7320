'use client';

import Link from 'next/link';
import { LogLine } from '@/components/car/log-line';
import type { LogEntry } from '@/lib/wire/views/log';

interface LatelyProps {
  readonly car: string;
  readonly entries: readonly LogEntry[];
}

/**
 * The newest entries of the log. On the client's side, like all that draws signs in numbers: what the server streams
 * may be cut anywhere, and where it is cut inside a drawing a style stands that the page's policy refuses.
 */
export function Lately({ car, entries }: LatelyProps) {
  return (
    <section className="sheet lately" aria-labelledby="lately">
      <header>
        <h2 id="lately">Changed lately</h2>
        <Link className="end do" href={`/cars/${encodeURIComponent(car)}/log`} prefetch={false}>
          Whole log
        </Link>
      </header>
      {entries.length === 0 ? <p className="idle dim">Nothing has been said about this car yet.</p> : null}
      <ol>
        {entries.map((entry, index) => (
          <li key={entry.id}>
            <span className="num dim">{entries[index - 1]?.day === entry.day ? '' : entry.day}</span>
            <span className="num">{entry.time}</span>
            <LogLine entry={entry} />
          </li>
        ))}
      </ol>
    </section>
  );
}
