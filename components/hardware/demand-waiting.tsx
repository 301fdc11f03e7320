import { Glyph } from '@/components/ui/glyph';
import './hardware.css';

/** While the cars are read: hatching where the items will stand. */
export function DemandWaiting() {
  return (
    <div aria-busy="true">
      <h1>
        <Glyph name="clock" size={32} /> The cars are being read
      </h1>
      <section className="sheet blank">
        {[1, 2, 3].map((line) => (
          <span key={line} className="hatch" />
        ))}
      </section>
    </div>
  );
}
