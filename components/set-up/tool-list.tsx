import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { SetUpTool, ToolsView } from '@/lib/wire/views/set-up';
import { DropButton } from './drop-button';

interface ToolListProps {
  readonly view: ToolsView;
  /** Leads and owners have a page for each tool; everybody may say that one fell. */
  readonly hasPages: boolean;
}

/** Tools, gauges and adapters, each with what it can do and whether it may be believed today. */
export function ToolList({ view: { tools, adapters }, hasPages }: ToolListProps) {
  const gauges = tools.filter(({ isGauge }) => isGauge);
  const turning = tools.filter(({ isGauge }) => !isGauge);
  return (
    <>
      <section className="sheet" aria-labelledby="tools">
        <header>
          <h2 id="tools">On the wall</h2>
          <span className="dim">anybody may say that one fell; it is suspect from that moment</span>
        </header>
        <ul className="lines people">
          {turning.length === 0 ? (
            <li>
              <Glyph name="gap" />
              <span className="t">
                <b>No torque tools yet</b>
                <span className="small dim">
                  A joint can be snug without one. The first final will ask for one that fits.
                </span>
              </span>
            </li>
          ) : null}
          {turning.map((tool) => (
            <ToolLine key={tool.id} tool={tool} hasPage={hasPages} />
          ))}
        </ul>
      </section>
      {gauges.length === 0 ? null : (
        <section className="sheet" aria-labelledby="gauges">
          <header>
            <h2 id="gauges">Gauges</h2>
            <span className="dim">what checks are read with</span>
          </header>
          <ul className="lines people">
            {gauges.map((tool) => (
              <ToolLine key={tool.id} tool={tool} hasPage={hasPages} />
            ))}
          </ul>
        </section>
      )}
      {adapters.length === 0 ? null : (
        <section className="sheet" aria-labelledby="adapters">
          <header>
            <h2 id="adapters">Adapters</h2>
            <span className="dim">each changes what is set on the tool</span>
          </header>
          <ul className="lines people">
            {adapters.map(({ id, name, says }) => (
              <li key={id}>
                <span className="cellbox">A</span>
                <span className="t">
                  <b>
                    {id} {name}
                  </b>
                  <span className="small dim">{says}</span>
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** Many a tool is called by its range, `click wrench 1–10 N·m`: once is enough. */
const isSaidBy = (name: string, range: string): boolean => name.includes(range.replace(' to ', '–'));

interface ToolLineProps {
  readonly tool: SetUpTool;
  readonly hasPage: boolean;
}

function ToolLine({ tool, hasPage }: ToolLineProps) {
  const { id, name, kind, range, length, cycles, calibration, isUsable, isSuspect, inDoubt } = tool;
  return (
    <li>
      <Glyph name={isUsable ? 'calok' : 'caldue'} />
      <span className="t">
        <b>
          {id} {name}
        </b>
        <span className="small dim">
          {isSaidBy(name, range) ? kind : `${kind}, ${range}`}
          {length === null ? '' : `, ${length} to the handle mark`}
          {cycles === null ? '' : `; ${cycles}`}
        </span>
        <span className={isUsable ? 'small' : 'small stop'}>
          {calibration}
          {inDoubt === null ? '' : `; ${inDoubt} in doubt by it`}
        </span>
      </span>
      <span className="acts">
        {hasPage ? (
          <Link className="btn" href={`/set-up/tools/${encodeURIComponent(id)}`} prefetch={false}>
            {inDoubt === null ? 'Open' : 'What it touched'}
            <span className="vh">: {id}</span>
          </Link>
        ) : null}
        {isSuspect ? null : <DropButton tool={{ id, name }} />}
      </span>
    </li>
  );
}
