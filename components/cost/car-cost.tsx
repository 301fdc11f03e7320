import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import { PrintButton } from '@/components/ui/print-button';
import type { CostView, MaterialView } from '@/lib/wire/views/cost';
import { Quotes } from './quotes';
import { Rates } from './rates';
import { StageTable } from './stage-table';
import './cost.css';

interface CarCostProps {
  readonly view: CostView;
  /** An owner says what an hour costs. */
  readonly maySet: boolean;
}

/** What a car cost so far, of what it is planned to cost: by stage, what it is made of, scrap apart, and what has no price. */
export function CarCost({ view, maySet }: CarCostProps) {
  const { id, chassis, colour, says, notes, basis, unpriced, scrapped } = view;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>
            Cost of <CarTag chassis={chassis} colour={colour} />
          </h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <PrintButton what="the cost" />
          <Link className="btn" href={`/cars/${encodeURIComponent(id)}`} prefetch={false}>
            The car
          </Link>
        </p>
      </div>
      <div className="cost-cols">
        <div className="cost-side">
          <Sum view={view} />
          {unpriced.length === 0 ? null : <NoPrice view={view} />}
          {view.sent.length === 0 ? null : <Quotes plan={view.plan} sent={view.sent} />}
          <Rates rates={view.rates} today={view.today} maySet={maySet} />
        </div>
        <div className="cost-main">
          <StageTable view={view} />
          <Materials view={view} />
          <section className="sheet" aria-labelledby="scrap">
            <header>
              <h2 id="scrap">Scrap, apart</h2>
              <span className="end">
                <b className="num">{view.scrap}</b>
              </span>
            </header>
            {scrapped.length === 0 ? (
              <p className="body dim">Nothing of this car was thrown away, lost or used up twice.</p>
            ) : (
              <ul className="lines3">
                {scrapped.map(({ name, quantity, says: why, money }, index) => (
                  <li key={index}>
                    <span className="t">
                      <b>{name}</b>
                      <span className="small dim">{why}</span>
                    </span>
                    <span className="num">{quantity}</span>
                    <span className="num r">{money ?? 'no price'}</span>
                  </li>
                ))}
              </ul>
            )}
          </section>
        </div>
      </div>
      {notes.map((note) => (
        <p key={note} className="small">
          {note}
        </p>
      ))}
      <p className="small dim">{basis}</p>
    </>
  );
}

function Sum({ view: { total, planned, scrapSays, share, sum } }: Pick<CarCostProps, 'view'>) {
  return (
    <section className="sheet sum" aria-labelledby="sofar">
      <h2 className="label" id="sofar">
        So far, before tax
      </h2>
      <p className="big num">{total}</p>
      <svg viewBox="0 0 100 5" preserveAspectRatio="none" aria-hidden="true">
        <rect className="bar" width="100" height="5" />
        <rect className="has" width={Math.round(100 * share)} height="5" />
      </svg>
      <p>
        of <b className="num">{planned}</b> planned
        {scrapSays === null ? '' : `; ${scrapSays}`}
      </p>
      <dl className="rows">
        {(['material', 'hours', 'outside', 'freight'] as const).map((kind) => (
          <div key={kind}>
            <dt>{KIND_WORDS[kind]}</dt>
            <dd className="num">{sum[kind].soFar}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const KIND_WORDS = {
  material: 'Material',
  hours: 'Hours',
  outside: 'Outside work',
  freight: 'Freight',
} as const;

function NoPrice({ view: { unpriced } }: Pick<CarCostProps, 'view'>) {
  return (
    <section className="sheet noprice" aria-labelledby="noprice">
      <header>
        <h2 id="noprice">No price known</h2>
        <span className="end dim num">{unpriced.length}</span>
      </header>
      <p className="body small">It is in no sum on this page.</p>
      <ul className="lines3">
        {unpriced.map(({ name, says }) => (
          <li key={`${name} ${says}`}>
            <Glyph name="gap" size={20} />
            <span className="t">
              <b>{name}</b>
              <span className="small dim">{says}</span>
            </span>
          </li>
        ))}
      </ul>
      <p className="acts">
        <Link className="btn" href="/suppliers" prefetch={false}>
          Say a price
        </Link>
      </p>
    </section>
  );
}

function Materials({ view: { materials, folded, sum } }: Pick<CarCostProps, 'view'>) {
  const [shown, rest] =
    folded === null ? [materials, []] : [materials.slice(0, folded.from), materials.slice(folded.from)];
  return (
    <section className="sheet" aria-labelledby="madeof">
      <header>
        <h2 id="madeof">What the material is made of</h2>
        <span className="end">
          <b className="num">{sum.material.soFar}</b>
        </span>
      </header>
      {materials.length === 0 ? (
        <p className="body dim">Nothing went into this car yet.</p>
      ) : (
        <MaterialLines lines={shown} />
      )}
      {folded === null ? null : (
        <details>
          <summary>{folded.says}</summary>
          <MaterialLines lines={rest} />
        </details>
      )}
    </section>
  );
}

function MaterialLines({ lines }: { readonly lines: readonly MaterialView[] }) {
  return (
    <ul className="lines3">
      {lines.map(({ key, name, quantity, basis, money }) => (
        <li key={`${key} ${basis}`}>
          <span className="t">
            <b>{name}</b>
            <span className="small dim">
              {key}, {basis}
            </span>
          </span>
          <span className="num">{quantity}</span>
          <span className="num r">{money}</span>
        </li>
      ))}
    </ul>
  );
}
