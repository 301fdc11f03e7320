import { Glyph } from '@/components/ui/glyph';
import './car.css';

/** While the car is read: what is known of it already, and hatching where the rest will stand. */
export function CarWaiting({ chassis }: { readonly chassis: string }) {
  return (
    <main className="car waiting" aria-busy="true">
      <section className="chead">
        <div className="big platecard">
          <p className="no">{chassis}</p>
        </div>
        <div className="cway">
          <h1>
            <Glyph name="clock" size={32} /> The car is being read
          </h1>
          <span className="hatch l1" />
          <span className="hatch l2" />
        </div>
      </section>
      <section className="sheet loose">
        <header>
          <h2>Loose ends</h2>
        </header>
        {[1, 2, 3, 4].map((line) => (
          <span key={line} className="hatch l3" />
        ))}
      </section>
    </main>
  );
}
