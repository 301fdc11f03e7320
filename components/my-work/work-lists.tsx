'use client';

import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { WorkLine, WorkList } from '@/lib/wire/views/my-work';

/** What comes after the opened job: each line opens it. What waits says for what. */
export function WorkLists({ lists }: { readonly lists: readonly WorkList[] }) {
  return lists.map(({ id, title, says, lines }) => (
    <section key={id} className="sheet worklist" aria-labelledby={`list-${id}`}>
      <header>
        <h2 id={`list-${id}`}>{title}</h2>
        <span className="dim small">{says}</span>
      </header>
      <Lines lines={lines.slice(0, SHOWN)} />
      {lines.length > SHOWN ? (
        <details>
          <summary>{`${String(lines.length - SHOWN)} more`}</summary>
          <Lines lines={lines.slice(SHOWN)} />
        </details>
      ) : null}
    </section>
  ));
}

/** What comes first is what one looks for; the rest of a long list is folded. */
const SHOWN = 5;

function Lines({ lines }: Pick<WorkList, 'lines'>) {
  return (
    <ol>
      {lines.map((line) => (
        <Line key={line.id} line={line} />
      ))}
    </ol>
  );
}

function Line({ line }: { readonly line: WorkLine }) {
  const { car, sign, name, says, why, planned, due, waits, lacks, href, isOpened } = line;
  return (
    <li className={isOpened ? 'here' : ''}>
      <Link className="wl" href={href} prefetch={false} aria-current={isOpened ? 'true' : undefined}>
        <Glyph name={sign} />
        <CarTag chassis={car.chassis} colour={car.colour} />
        <span className="t">
          <b>{name}</b>
          <span className="small dim">
            {says}
            {isOpened ? ', opened above' : ''}
          </span>
          {lacks === '' ? null : <span className="small stop">{lacks}</span>}
        </span>
        <span className="small dim">{why}</span>
        <span className="num w">{planned}</span>
        <span className={due.isNow ? 'due nowg' : 'due'}>{due.text}</span>
      </Link>
      {waits.length === 0 ? null : (
        <ul className="for">
          {waits.slice(0, MOST).map((wait) => (
            <li key={wait.says}>
              <Glyph name={wait.sign} size={20} />
              <span className="small">
                {wait.says} {wait.clears}
              </span>
              {wait.href === null ? null : (
                <Link className="do" href={wait.href} prefetch={false}>
                  {wait.act ?? 'Go there'}
                  <span className="vh">: {wait.says}</span>
                </Link>
              )}
            </li>
          ))}
          {waits.length > MOST ? (
            <li>
              <span className="small dim">and {String(waits.length - MOST)} more</span>
            </li>
          ) : null}
        </ul>
      )}
    </li>
  );
}

/** A line tells what is nearest; all of it stands in the job. */
const MOST = 2;
