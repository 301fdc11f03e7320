import { Glyph } from '@/components/ui/glyph';
import type { ToolPageView } from '@/lib/wire/views/set-up';
import { DropButton } from './drop-button';

/** What it is, its calibrations, and the times in which it was not to be believed. */
export function ToolHistory({ view: { tool, calibrations, suspect } }: { readonly view: ToolPageView }) {
  return (
    <section className="sheet" aria-labelledby="tool">
      <header>
        <h2 id="tool">
          {tool.id} {tool.name}
        </h2>
        <span className="dim">
          {tool.kind}, {tool.range}
        </span>
      </header>
      <ul className="lines people">
        <li>
          <Glyph name={tool.isUsable ? 'calok' : 'caldue'} />
          <span className="t">
            <b className={tool.isUsable ? '' : 'stop'}>{tool.calibration}</b>
            <span className="small dim">
              {tool.length === null
                ? 'no handle length on record: no adapter can be judged with it'
                : `${tool.length} from the square drive to the handle mark`}
              {tool.cycles === null ? '; its cycles are not counted' : `; ${tool.cycles}`}
            </span>
          </span>
          <span className="acts">{tool.isSuspect ? null : <DropButton tool={tool} />}</span>
        </li>
        {suspect.map(({ says, found, isOpen }) => (
          <li key={says}>
            <Glyph name={isOpen ? 'failed' : 'clock'} />
            <span className="t">
              <b>Suspect: {says}</b>
              <span className="small dim">{found}</span>
            </span>
          </li>
        ))}
        {calibrations.length === 0 ? (
          <li>
            <Glyph name="gap" />
            <span className="t">
              <b>Never calibrated here</b>
              <span className="small dim">nothing can be final by it</span>
            </span>
          </li>
        ) : null}
        {calibrations.map(({ says, certificate }) => (
          <li key={says}>
            <Glyph name="passed" />
            <span className="t">
              <b>Calibrated {says}</b>
              <span className="small dim">
                {certificate === null ? 'no certificate on record' : `certificate ${certificate}`}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
