import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { PurchasesView } from '@/lib/wire/views/purchase';
import './purchases.css';

/** Every order that was sent; what is on its way first. */
export function PurchaseList({ view: { says, orders } }: { readonly view: PurchasesView }) {
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Orders</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href="/order" prefetch={false}>
            Week’s order
          </Link>
        </p>
      </div>
      {orders.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name="vendor" size={32} />
          <div>
            <h2>Nothing was ordered yet</h2>
            <p>An order stands here from the moment an owner approves it, until its last piece has come.</p>
          </div>
        </section>
      ) : (
        <section className="sheet" aria-label="Orders">
          <ul className="sent">
            {orders.map(({ id, supplier, says: when, stand, isOpen, isLate, total }) => (
              <li key={id}>
                <Link href={`/orders/${id}`} prefetch={false}>
                  <Glyph name={isOpen ? 'vendor' : 'passed'} />
                  <span className="t">
                    <b>
                      Order {id}, {supplier}
                    </b>
                    <span className={isLate ? 'small stop' : 'small dim'}>{when}</span>
                  </span>
                  <span className="small">{stand}</span>
                  <b className="num">{total}</b>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
