'use client';

import Link from 'next/link';
import { ActForm } from '@/components/act/act-form';
import { useDesk } from '@/components/act/desk-context';
import { hasForm } from '@/components/act/form-table';
import { RefusalLines } from '@/components/shop/refusal-list';
import { Glyph } from '@/components/ui/glyph';
import type { RowView } from '@/lib/wire/views/car';
import { BodyLines } from './body-lines';
import { usePlaces } from './places';

/** One line: what it is, who keeps it, by which gate. It opens to everything that can be done about it. */
export function Row({ row }: { readonly row: RowView }) {
  const { isOpen, toggle } = usePlaces();
  const open = isOpen(row.id);
  return (
    <li id={row.id} className={open ? 'crow on' : 'crow'} data-row>
      <div className="rowhead">
        <button
          type="button"
          className="rowbtn"
          aria-expanded={open}
          aria-controls={open ? `${row.id}-more` : undefined}
          onClick={() => toggle(row.id)}
        >
          <Glyph name={row.sign} />
          <span className="t">
            <b>{row.name}</b>
            {row.says === '' ? null : <span className="small dim">{row.says}</span>}
          </span>
          <span className="own">
            {row.who.length === 0 ? (
              <span className="small dim">{row.due === null ? '' : 'nobody'}</span>
            ) : (
              row.who.map(({ id, name, initials }) => (
                <span key={id} className="cellbox">
                  <span className="vh">{name}</span>
                  <span aria-hidden="true">{initials}</span>
                </span>
              ))
            )}
          </span>
          <span className={row.due?.isNow === true ? 'due nowg' : 'due'}>{row.due?.text}</span>
          <span className="word">
            {row.sheet === null ? row.open : 'More'} <Glyph name="arrow" size={16} />
          </span>
        </button>
        {row.sheet === null ? null : (
          <Link className="do" href={row.sheet} prefetch={false}>
            {row.open} <span className="vh">{row.name}</span> <Glyph name="arrow" size={16} />
          </Link>
        )}
      </div>
      {open ? <Panel row={row} /> : null}
    </li>
  );
}

function Panel({ row }: { readonly row: RowView }) {
  const acts = row.acts.filter(hasForm);
  const isIdle = acts.length === 0 && row.waits.length === 0 && row.body.length === 0;
  return (
    <div className="rowmore" id={`${row.id}-more`}>
      {row.facts.length === 0 ? null : (
        <dl className="facts">
          {row.facts.map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {row.waits.length === 0 ? null : (
        <section className="waits">
          <h4>{row.acts.length === 0 ? 'It waits for' : 'Not met now'}</h4>
          <RefusalLines lines={row.waits} />
        </section>
      )}
      {row.body.length === 0 ? null : <BodyLines lines={row.body} />}
      {acts.map((act) => (
        <ActForm key={`${act.type} ${act.key}`} act={act} />
      ))}
      {row.job === null ? null : <GiveJob job={row.job} />}
      {isIdle && row.sheet === null ? <p className="idle dim">Nothing is asked of it now.</p> : null}
    </div>
  );
}

/** Whom a job is given to is the lead's; nobody else is asked. */
function GiveJob({ job }: { readonly job: string }) {
  const { desk } = useDesk();
  const assign = desk.always.find(({ type }) => type === 'assign');
  if (assign === undefined || desk.whys[assign.why]?.[desk.me.id] !== undefined) return null;
  return <ActForm act={{ ...assign, kind: 'operation', key: job }} />;
}
