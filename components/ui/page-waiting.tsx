import { Glyph } from './glyph';

interface PageWaitingProps {
  /** What is being read. */
  readonly says: string;
}

/** While a page is read: hatching where its lines will stand. */
export function PageWaiting({ says }: PageWaitingProps) {
  return (
    <div aria-busy="true">
      <h1>
        <Glyph name="clock" size={32} /> {says}
      </h1>
      <section className="sheet blank">
        {[1, 2, 3].map((line) => (
          <span key={line} className="hatch" />
        ))}
      </section>
    </div>
  );
}
