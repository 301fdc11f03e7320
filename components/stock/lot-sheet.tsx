import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import '@/components/shop/plate.css';
import { Glyph } from '@/components/ui/glyph';
import type { LotCar, LotView } from '@/lib/wire/views/stock';
import { LotActs } from './lot-acts';
import { StockActs } from './stock-acts';
import { BinCell } from './bin-cell';
import { StateWords } from './stock-list';
import './stock.css';

/** One lot: what came in and where every piece of it is now. */
export function LotSheet({ view, me }: { readonly view: LotView; readonly me: string }) {
  const { item, name, lot, bin, had, isGood, unit, state, cars, gone, joints, quarantined } = view;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>
            Lot <span className="nb">{lot}</span>, {name}
          </h1>
          <p className="dim">
            {view.received}; {view.facts.join('; ')}.
          </p>
        </div>
        <p className="acts">
          <Link className="btn" href={`/stock/items/${encodeURIComponent(item)}`} prefetch={false}>
            All of <span className="nb">{item}</span>
          </Link>
          <Link className="btn" href="/stock" prefetch={false}>
            All bins
          </Link>
        </p>
      </div>
      {quarantined === null ? null : (
        <section className="refusal notice apart" aria-labelledby="apart">
          <header>
            <Glyph name="hold" size={32} />
            <h2 id="apart">Kept apart</h2>
          </header>
          <div className="in">
            <p>
              <b>{quarantined.reason}</b>
            </p>
            <p className="small dim">
              {quarantined.by}, {quarantined.when}. From that minute every joint it is in is in doubt, on
              every car, until renewed or cleared with a reason.
              {cars.some(({ work }) => work.length > 0)
                ? ' What work used up of it raises no doubt by itself: hold the car, or report a finding.'
                : ''}
            </p>
          </div>
        </section>
      )}
      <section className="sheet whole" aria-labelledby="where">
        <header>
          <h2 id="where">Where it is</h2>
          <span className={joints.inDoubt === 0 ? 'dim' : 'stop'}>{jointWords(joints)}</span>
        </header>
        <ul className="where">
          <li>
            <span className="had num">
              {isGood ? <b>{had}</b> : <s>{had}</s>}
              <span className="small dim">{unit}</span>
            </span>
            <BinCell bin={bin} />
            <span className="t">
              <b>On the shelf</b>
              <StateWords state={state} />
            </span>
          </li>
          {cars.map((car) => (
            <CarLine key={car.id} car={car} />
          ))}
          {gone.map(({ quantity, what, detail }) => (
            <li key={`${what} ${detail}`}>
              <span className="had num">
                <b>{quantity}</b>
              </span>
              <span className="t">
                <b>{what}</b>
                <span className="small dim">{detail}</span>
              </span>
            </li>
          ))}
        </ul>
        <p className="acts">
          <LotActs
            lot={lot ?? ''}
            isKeptApart={quarantined !== null}
            joints={joints.count}
            signers={view.signers}
            me={me}
          />
          <StockActs place={view} />
        </p>
      </section>
    </>
  );
}

const jointWords = ({ count, inDoubt }: LotView['joints']): string => {
  if (count === 0) return 'in no joint';
  const all = count === 1 ? 'one joint' : `${String(count)} joints`;
  return inDoubt === 0
    ? `in ${all}`
    : `in ${all}, ${inDoubt === count ? 'all' : String(inDoubt)} in doubt by it`;
};

function CarLine({ car }: { readonly car: LotCar }) {
  return (
    <li className="incar">
      <span className="had num">
        <b>{car.quantity}</b>
      </span>
      <span className="t">
        <b>
          <CarTag chassis={car.chassis} colour={car.colour} />
          {car.isDelivered ? <span className="small"> delivered</span> : null}
        </b>
        <ul>
          {car.joints.map(({ joint, name, href, at, level, inDoubt, quantity }) => (
            <li key={joint}>
              <Link className={inDoubt ? 'stop' : ''} href={href} prefetch={false}>
                <Glyph name={inDoubt ? 'disturbed' : level} />
                <span className="vh">{inDoubt ? 'in doubt' : level}: </span>
                <b className="nb">{joint}</b> <span>{name}</span>
                <span className="small dim">
                  {quantity}
                  {at === '' ? '' : `, ${at}`}
                </span>
              </Link>
            </li>
          ))}
          {car.work.map(({ operation, name, href, quantity }) => (
            <li key={name}>
              <Link href={href} prefetch={false}>
                <Glyph name="passed" />
                <b className="nb">{operation}</b> <span>{name}</span>
                <span className="small dim">{quantity}, used up</span>
              </Link>
            </li>
          ))}
        </ul>
      </span>
    </li>
  );
}
