'use client';

import Link from 'next/link';
import { Rail } from '@/components/board/rail';
import { Chip } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { CarView, ConditionRow, Head, PersonTag, StageView } from '@/lib/wire/views/car';

/** What is stamped on the car's plate, its way through the stages, and what is physically so. */
export function CarHead({ view, seesCost }: { readonly view: CarView; readonly seesCost: boolean }) {
  const { head, stages, conditions, id } = view;
  const isDone = head.delivered;
  return (
    <section className="chead">
      <Plate head={head} />
      <div className="cway">
        <div className="wayhead">
          <h1>{head.title}</h1>
          <p className="acts">
            {isDone ? null : (
              <a className="btn" href="#move">
                {view.gate.next === null ? 'Deliver' : 'Move car'}
              </a>
            )}
            <a className="btn" href="#trouble">
              Something is wrong
            </a>
            <Link className="btn" href={`/cars/${encodeURIComponent(id)}/log`} prefetch={false}>
              Log
            </Link>
            {seesCost ? (
              <Link className="btn" href={`/cars/${encodeURIComponent(id)}/cost`} prefetch={false}>
                Cost
              </Link>
            ) : null}
          </p>
        </div>
        <Way stages={stages} />
        <div className="belowway">
          <Conditions rows={conditions} />
          <Counts head={head} />
        </div>
      </div>
    </section>
  );
}

function Plate({ head }: { readonly head: Head }) {
  const { shop, chassis, colour, model, revision, crew, counts, donor, options } = head;
  return (
    <div className="big platecard">
      <span className="label mk">{shop}</span>
      <p className="no">
        <Chip colour={colour} />
        {chassis}
      </p>
      <dl>
        <div>
          <dt>Model</dt>
          <dd>{model}</dd>
        </div>
        <div>
          <dt>Plan</dt>
          <dd>{revision}</dd>
        </div>
        <div>
          <dt>Paint</dt>
          <dd className="paint">{colour ?? 'not chosen'}</dd>
        </div>
        <div>
          <dt>Loose ends</dt>
          <dd data-count="loose">{counts.ends}</dd>
        </div>
        <div className="wide">
          <dt>Crew</dt>
          <dd>
            <CrewCells crew={crew} />
          </dd>
        </div>
        {donor === '' ? null : (
          <div className="wide">
            <dt>Donor</dt>
            <dd>{donor}</dd>
          </div>
        )}
        {options.length === 0 ? null : (
          <div className="wide">
            <dt>Options</dt>
            <dd className="opts">
              {options.map(({ name, choice }) => (
                <span key={name}>
                  {name} <b>{choice ?? 'not chosen'}</b>
                </span>
              ))}
            </dd>
          </div>
        )}
      </dl>
    </div>
  );
}

function CrewCells({ crew }: { readonly crew: readonly PersonTag[] }) {
  if (crew.length === 0) return <span className="dim">nobody</span>;
  return (
    <span className="cells">
      {crew.map(({ id, name, initials }) => (
        <span key={id} className="cellbox">
          <span className="vh">{name}</span>
          <span aria-hidden="true">{initials}</span>
        </span>
      ))}
    </span>
  );
}

function Way({ stages }: { readonly stages: readonly StageView[] }) {
  return (
    <ol className="carway" data-stages={stages.length}>
      {stages.map(({ key, number, name, state, cell, crew, passed }) => (
        <li key={key} className={state} aria-current={state === 'now' ? 'step' : undefined}>
          <span className="nm2">
            <i>{number}</i>
            {name}
          </span>
          <span className="tr" aria-hidden="true" />
          <Rail rail={cell.rail} />
          <span className="vh">
            {cell.says}
            {passed === null ? '' : ` ${passed}.`}
            {crew.length === 0 ? '' : ` Crew: ${crew.map((each) => each.name).join(', ')}.`}
          </span>
          <span className="fr num" aria-hidden="true">
            <b>{cell.done}</b>/{cell.of}
            {cell.note === null ? null : <span className="note">{cell.note}</span>}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** What is so is drawn whole; what is not, dashed and struck, in the same place. */
function Conditions({ rows }: { readonly rows: readonly ConditionRow[] }) {
  // What is not so and has no drawing is told below; here it would be a list of words.
  const shown = rows.filter(({ isSo, hasOwnSign }) => isSo || hasOwnSign);
  if (shown.length === 0) return null;
  return (
    <ul className="conds" aria-label="Conditions">
      {shown.map((row) => (
        <li key={row.id}>
          <a href={`#${row.id}`} className={row.isSo ? 'so' : 'notso'} title={row.says}>
            {row.hasOwnSign ? <Glyph name={row.sign} size={20} /> : null}
            <span>
              {row.name}
              {row.isSo ? '' : ': no'}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function Counts({ head }: { readonly head: Head }) {
  const { gate, gateName, gateSays, ends, endsSay } = head.counts;
  if (head.delivered) return null;
  return (
    <ul className="eq small">
      <li>
        <a href="#move">
          <b>
            {gate === 0 ? 'Nothing holds' : `${String(gate)} ${gate === 1 ? 'holds' : 'hold'}`} {gateName}
          </b>
        </a>
        {gateSays === '' ? null : <span>: {gateSays}</span>}
      </li>
      <li>
        <a href="#loose">
          <b>
            {ends} loose {ends === 1 ? 'end' : 'ends'}
          </b>
        </a>
        <span>: {endsSay}</span>
      </li>
    </ul>
  );
}
