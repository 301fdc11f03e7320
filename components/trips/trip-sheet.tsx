import Link from 'next/link';
import { PrintButton } from '@/components/ui/print-button';
import { Glyph } from '@/components/ui/glyph';
import type { TripView } from '@/lib/wire/views/trips';
import { BillTrip } from './bill-trip';
import { LoadVan } from './load-van';
import { PromiseTrip } from './promise-trip';
import { TripParts } from './trip-parts';
import './trips.css';

/** One trip: what is in the van, what came back, what it cost. */
export function TripSheet({ view }: { readonly view: TripView }) {
  const { id, supplier, goes, due, isLate, says, cars, waiting, bills } = view;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>
            Trip {id}: {supplier}
          </h1>
          <p className={isLate ? 'stop' : 'dim'}>
            {goes} to {due}; {says}
          </p>
        </div>
        <p className="acts">
          <Link className="btn" href="/trips" prefetch={false}>
            All trips
          </Link>
          {bills === null ? null : <PromiseTrip view={view} />}
          <PrintButton what="the list" />
        </p>
      </div>
      {cars.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="vendor" size={32} />
          <div>
            <h2>Nothing is on it yet</h2>
            <p>Say below what is in the van. What goes out counts as not here until it was looked over.</p>
          </div>
        </section>
      ) : (
        cars.map((each) => <TripParts key={each.car.id} trip={id} of={each} />)
      )}
      {waiting.map((each) => (
        <LoadVan key={each.car.id} trip={id} of={each} />
      ))}
      {bills === null ? null : (
        <section className="sheet bills" aria-labelledby="bills">
          <header>
            <h2 id="bills">Bills</h2>
            <BillTrip view={view} />
          </header>
          {bills.length === 0 ? (
            <p className="idle dim">None yet.</p>
          ) : (
            bills.map(({ says: what, lines, freight, sum }) => (
              <table key={what}>
                <caption className="small dim">{what}</caption>
                <tbody>
                  {lines.map(({ text, money }) => (
                    <tr key={text}>
                      <th scope="row">{text}</th>
                      <td className="num">{money}</td>
                    </tr>
                  ))}
                  <tr>
                    <th scope="row">The way there and back</th>
                    <td className="num">{freight}</td>
                  </tr>
                </tbody>
                <tfoot>
                  <tr>
                    <th scope="row">In all</th>
                    <td className="num">{sum}</td>
                  </tr>
                </tfoot>
              </table>
            ))
          )}
        </section>
      )}
      <p className="small dim">
        What comes back is looked over before it counts as here: that look is signed on the record of the car.
      </p>
    </>
  );
}
