import { Glyph } from '@/components/ui/glyph';
import type { ToolsView } from '@/lib/wire/views/set-up';

/** Tools and adapters, each with what it can do and whether it may be believed today. */
export function ToolList({ view: { tools, adapters } }: { readonly view: ToolsView }) {
  return (
    <section className="sheet" aria-labelledby="tools">
      <header>
        <h2 id="tools">On the wall</h2>
      </header>
      <ul className="lines">
        {tools.length === 0 ? (
          <li>
            <Glyph name="gap" />
            <span className="t">
              <b>No tools yet</b>
              <span className="small dim">
                A joint can be snug without one. The first final will ask for one that fits.
              </span>
            </span>
          </li>
        ) : null}
        {tools.map(({ id, name, kind, range, length, calibration, isUsable }) => (
          <li key={id}>
            <Glyph name={isUsable ? 'calok' : 'caldue'} />
            <span className="t">
              <b>
                {id} {name}
              </b>
              <span className="small dim">
                {kind}, {range}
                {length === null ? '' : `, ${length} to the handle mark`}
              </span>
            </span>
            <span className={isUsable ? 'num' : 'num stop'}>{calibration}</span>
          </li>
        ))}
        {adapters.map(({ id, name, says }) => (
          <li key={id}>
            <span className="cellbox">A</span>
            <span className="t">
              <b>
                {id} {name}
              </b>
              <span className="small dim">adapter</span>
            </span>
            <span className="num">{says}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
