import { Glyph } from '@/components/ui/glyph';
import './my-work.css';

/** While the floor is read: hatching where the job will stand. */
export function WorkWaiting() {
  return (
    <div aria-busy="true">
      <h1>
        <Glyph name="clock" size={32} /> Your work is being read
      </h1>
      <section className="sheet blank">
        {[1, 2, 3, 4].map((line) => (
          <span key={line} className="hatch" />
        ))}
      </section>
    </div>
  );
}
