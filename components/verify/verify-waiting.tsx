import { Glyph } from '@/components/ui/glyph';
import './verify.css';

/** While the floor is read: hatching where the lines will stand. */
export function VerifyWaiting() {
  return (
    <div aria-busy="true">
      <h1>
        <Glyph name="clock" size={32} /> The floor is being read
      </h1>
      <section className="sheet blank">
        {[1, 2, 3].map((line) => (
          <span key={line} className="hatch" />
        ))}
      </section>
    </div>
  );
}
