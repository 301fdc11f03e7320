import { Glyph } from '@/components/ui/glyph';
import type { LaterView } from '@/lib/wire/views/order';
import { CarTags } from './car-tags';

/** What is needed, and may wait for a later order: until when. */
export function Later({ lines }: { readonly lines: readonly LaterView[] }) {
  return (
    <section className="sheet later" aria-labelledby="later">
      <details>
        <summary>
          <h2 id="later">
            {lines.length === 1 ? '1 need can wait' : `${String(lines.length)} needs can wait`} for a later
            order
          </h2>
        </summary>
        <ul className="notes">
          {lines.map(({ key, item, quantity, says, cars }) => (
            <li key={key}>
              <Glyph name="clock" />
              <span className="t">
                <b>{item}</b>
                <span className="small">{says}</span>
                <CarTags cars={cars} />
              </span>
              <b className="num">{quantity}</b>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
