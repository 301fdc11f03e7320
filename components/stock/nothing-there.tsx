import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';

/** A lot or an item that nobody has heard of. */
export function NothingThere() {
  return (
    <main className="pg">
      <section className="sheet nothing">
        <Glyph name="hint" size={32} />
        <div>
          <h1>Nothing of that name is on the books</h1>
          <p>A lot is known from the day it came in, an item from the plan that names it.</p>
          <p className="acts">
            <Link className="btn" href="/stock" prefetch={false}>
              All bins
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
