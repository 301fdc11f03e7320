import Link from 'next/link';
import type { ItemView } from '@/lib/wire/views/stock';
import { StockActs } from './stock-acts';
import { BinCell } from './bin-cell';
import { StateWords } from './stock-list';
import './stock.css';

/** One item: its bin, and every lot of it with what may be done there. */
export function ItemSheet({ view: { item, name, bin, says, places } }: { readonly view: ItemView }) {
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>{name}</h1>
          <p className="dim">
            {item}. {says}
          </p>
        </div>
        <p className="acts">
          <Link className="btn" href="/stock" prefetch={false}>
            All bins
          </Link>
        </p>
      </div>
      {places.map((place) => (
        <section
          key={place.lot ?? ''}
          className={place.state.isStop ? 'sheet onplace bad' : 'sheet onplace'}
          aria-label={place.lot === null ? 'Counted by bin' : `Lot ${place.lot}`}
        >
          <div className="in">
            <BinCell bin={place.bin ?? bin} />
            <span className="t">
              <b>
                {place.lot === null ? (
                  'By bin'
                ) : (
                  <Link href={`/stock/lots/${encodeURIComponent(place.lot)}`} prefetch={false}>
                    Lot {place.lot}
                  </Link>
                )}
              </b>
              <span className="small dim">{place.came}</span>
              <StateWords state={place.state} />
            </span>
            <span className="had num">
              {place.isGood ? <b>{place.had}</b> : <s>{place.had}</s>}
              <span className="small dim">{place.unit}</span>
            </span>
          </div>
          <p className="acts">
            <StockActs place={place} />
          </p>
        </section>
      ))}
    </>
  );
}
