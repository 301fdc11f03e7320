import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { SentOrder } from '@/lib/wire/views/order';

/** Orders on their way: they count for the cars, and are received on a page of their own. */
export function Sent({ orders }: { readonly orders: readonly SentOrder[] }) {
  return (
    <section className="sheet" aria-labelledby="sent">
      <header>
        <h2 id="sent">On its way</h2>
      </header>
      <ul className="notes">
        {orders.map(({ id, supplier, says, isLate, total }) => (
          <li key={id}>
            <Glyph name="vendor" />
            <span className="t">
              <b>
                Order {id}, {supplier}
              </b>
              <span className={isLate ? 'small stop' : 'small dim'}>
                {says}, {total}
              </span>
            </span>
            <Link className="btn" href={`/orders/${id}`} prefetch={false}>
              Goods in<span className="vh"> of order {id}</span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
