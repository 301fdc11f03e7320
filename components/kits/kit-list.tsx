import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { KitsView } from '@/lib/wire/views/kits';
import './kits.css';

/** Boxes to fill, what comes first first; those that are whole stand at the end. */
export function KitList({ view: { says, kits } }: { readonly view: KitsView }) {
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Kits to pick</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href="/stock" prefetch={false}>
            Stock
          </Link>
        </p>
      </div>
      {kits.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="passed" size={32} />
          <div>
            <h2>Nothing to pick</h2>
            <p>Work that may begin, or that is given to somebody, and takes hardware stands here.</p>
          </div>
        </section>
      ) : (
        <section className="sheet" aria-label="Kits">
          <ul className="boxes">
            {kits.map(({ href, car, name, says: more, picked, isWhole, due, lacks }) => (
              <li key={href}>
                <Link className="box" href={href} prefetch={false}>
                  <CarTag chassis={car.chassis} colour={car.colour} />
                  <span className="t">
                    <b>{name}</b>
                    <span className="small dim">{more}</span>
                    {lacks === '' ? null : (
                      <span className="small stop">
                        <Glyph name="owed" size={20} /> {lacks}
                      </span>
                    )}
                  </span>
                  <span className="in num">
                    <Glyph name={isWhole ? 'passed' : 'gap'} size={20} /> {picked}
                  </span>
                  <span className={due.isNow ? 'due nowg' : 'due'}>{due.text}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** A car that is not on the floor, or work that it does not have. */
export function NoSuchKit() {
  return (
    <main className="pg">
      <section className="sheet nothing">
        <Glyph name="hint" size={32} />
        <div>
          <h1>There is no such kit</h1>
          <p>The car is not on the floor, or its plan has no such work.</p>
          <p className="acts">
            <Link className="btn" href="/kits" prefetch={false}>
              Kits to pick
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
