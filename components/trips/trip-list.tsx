import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { TripsView, WaitingCar } from '@/lib/wire/views/trips';
import { PlanTrip } from './plan-trip';
import './trips.css';

/** What is out of the house and what waits to go: the next trip first. */
export function TripList({ view: { says, trips, waiting, plan } }: { readonly view: TripsView }) {
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Outside work</h1>
          <p className="dim">{says}</p>
        </div>
        {plan === null ? null : (
          <p className="acts">
            <PlanTrip plan={plan} />
          </p>
        )}
      </div>
      {trips.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="vendor" size={32} />
          <div>
            <h2>No trip yet</h2>
            <p>
              A trip takes parts of several cars to who works on them. A lead plans it; whoever loads the van
              says what is in it.
            </p>
          </div>
        </section>
      ) : (
        <section className="sheet" aria-label="Trips">
          <ul className="triplist">
            {trips.map(({ id, href, name, when, says: more, isOver, isStop }) => (
              <li key={id}>
                <Link className="trip" href={href} prefetch={false}>
                  <b className="nr">{id}</b>
                  <span className="t">
                    <b>{name}</b>
                    <span className="small dim">{when}</span>
                  </span>
                  <span className={isStop ? 'state stop' : 'state'}>
                    <Glyph name={isOver ? 'passed' : 'vendor'} size={20} /> {more}
                  </span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Waiting cars={waiting} />
    </>
  );
}

function Waiting({ cars }: { readonly cars: readonly WaitingCar[] }) {
  if (cars.length === 0) return null;
  return (
    <section className="sheet" aria-labelledby="waits">
      <header>
        <h2 id="waits">Waits for a trip</h2>
        <span className="small dim">graded to be refurbished, and worked on elsewhere by the plan</span>
      </header>
      {cars.map(({ car, parts }) => (
        <div key={car.id} className="ofcar">
          <CarTag chassis={car.chassis} colour={car.colour} />
          <ul className="small">
            {parts.map(({ key, name, work, days }) => (
              <li key={key}>
                <b>{name}</b> <span className="nb dim">{key}</span>{' '}
                <span className="dim">
                  {work === '' ? '' : `${work}, `}
                  <span className="nb">{days}</span>
                </span>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

export function NoSuchTrip() {
  return (
    <main className="pg">
      <section className="sheet nothing">
        <Glyph name="hint" size={32} />
        <div>
          <h1>There is no such trip</h1>
          <p>Nothing was ever sent out under this number.</p>
          <p className="acts">
            <Link className="btn" href="/trips" prefetch={false}>
              All trips
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
