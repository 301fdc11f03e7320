import Link from 'next/link';
import { BareStrip } from '@/components/shop/bare-strip';

export const dynamic = 'force-dynamic';

export const metadata = { title: 'Not here' };

export default function NotFound() {
  return (
    <>
      <BareStrip />
      <main className="pg">
        <section className="sheet notice">
          <h1>There is no such page</h1>
          <p>
            The address names nothing in this shop. It may be spelled another way, or what it named was never
            begun. Nothing was changed.
          </p>
          <p className="acts">
            <Link className="btn" href="/board">
              Track board
            </Link>
          </p>
        </section>
      </main>
    </>
  );
}
