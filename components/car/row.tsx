'use client';

import Link from 'next/link';
import { useState } from 'react';
import { ActForm } from '@/components/act/act-form';
import { ActList } from '@/components/act/act-list';
import { useDesk } from '@/components/act/desk-context';
import { hasForm } from '@/components/act/form-table';
import { PhotoStrip } from '@/components/photos/photo-strip';
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
            {row.photos === undefined ? null : (
              <span className="small dim">
                <Glyph name="photo" size={16} /> {row.photos.length}{' '}
                {row.photos.length === 1 ? 'photograph' : 'photographs'}
              </span>
            )}
          </span>
          <span className="own">
            {row.who.length === 0 ? (
              <span className="small dim">{row.keeper}</span>
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
  const isIdle =
    !row.acts.some(hasForm) && row.waits.length === 0 && row.body.length === 0 && row.photos === undefined;
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
      {row.photos === undefined ? null : (
        <div className="rowphotos">
          <PhotoStrip photos={row.photos} />
        </div>
      )}
      {row.waits.length === 0 ? null : (
        <section className="waits">
          <h4>{row.acts.length === 0 ? 'It waits for' : 'Not met now'}</h4>
          <RefusalLines lines={row.waits} />
        </section>
      )}
      <Steps row={row} />
      {row.body.length === 0 ? null : <BodyLines lines={row.body} />}
      <ActList acts={row.acts} job={row.job} />
      <RemarkOn row={row} />
      {isIdle && row.sheet === null ? <p className="idle dim">Nothing is asked of it now.</p> : null}
    </div>
  );
}

/** A remark about this very thing: it stands in its row, and in the log. */
function RemarkOn({ row }: { readonly row: RowView }) {
  const { desk } = useDesk();
  const [isOpen, setOpen] = useState(false);
  const note = desk.always.find(({ type }) => type === 'add-note');
  const key = row.id.slice(row.id.indexOf(':') + 1);
  if (note === undefined || key === '') return null;
  return (
    <>
      <p className="oracts">
        <button type="button" className="btn" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          Remark<span className="vh"> on {row.name}</span>
        </button>
      </p>
      {isOpen ? <ActForm act={{ ...note, key }} /> : null}
    </>
  );
}

/** The plan's steps, where the work may be done now. */
function Steps({ row }: { readonly row: RowView }) {
  const { desk } = useDesk();
  const act = row.acts.find(({ kind }) => kind === 'operation');
  const steps = act === undefined ? [] : (desk.operations[act.key]?.steps ?? []);
  if (steps.length === 0) return null;
  return (
    <section className="worksteps">
      <h4>Steps</h4>
      <ol>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </section>
  );
}
