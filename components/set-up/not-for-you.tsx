import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';

/** Somebody is signed in who may not do this: it says who may, and shows nothing of it. */
export function NotForYou() {
  return (
    <main className="pg">
      <section className="refusal notice">
        <header>
          <Glyph name="lock" size={32} />
          <h1>This is for a lead or an owner</h1>
        </header>
        <div className="in">
          <p>
            People, tools, plans and new cars are set up by them. If something is missing there, tell one of
            them.
          </p>
          <p className="acts">
            <Link className="btn" href="/board">
              Track board
            </Link>
          </p>
        </div>
      </section>
    </main>
  );
}
