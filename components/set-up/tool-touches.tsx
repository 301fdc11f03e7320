import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import '@/components/shop/plate.css';
import { Glyph } from '@/components/ui/glyph';
import type { ToolPageView } from '@/lib/wire/views/set-up';

/** Every joint that stands by it, on all cars, the delivered ones too; those in doubt first. */
export function ToolTouches({ view: { tool, touches, cars, since } }: { readonly view: ToolPageView }) {
  return (
    <section className="sheet" aria-labelledby="touched">
      <header>
        <h2 id="touched">What it touched</h2>
        <span className="dim">
          {since === null ? 'ever' : `since it was last known to be good, ${since}`}
          {touches.length === 0 ? '' : `: ${String(touches.length)} joints on ${String(cars)} cars`}
        </span>
      </header>
      <ul className="lines people">
        <li>
          <Glyph name={tool.inDoubt === null ? 'passed' : 'failed'} />
          <span className="t">
            <b className={tool.inDoubt === null ? '' : 'stop'}>
              {tool.inDoubt === null ? 'Nothing is in doubt by it' : `${tool.inDoubt} in doubt by it`}
            </b>
            {tool.inDoubt === null ? null : (
              <span className="small dim">
                Each is a loose end on its car. Applying it again proves nothing about one that may be too
                tight.
              </span>
            )}
          </span>
        </li>
        {touches.map(({ car, chassis, colour, isDelivered, joint, name, href, got, when, who, doubt }) => (
          <li key={`${car} ${joint}`}>
            <Glyph name={doubt === null ? 'final' : 'failed'} />
            <span className="t">
              <b>
                {joint} {name}
              </b>
              <span className="small dim">
                {got}; {who}, {when}
              </span>
              <span className={doubt === null ? 'small' : 'small stop'}>
                <CarTag chassis={chassis} colour={colour} />
                {isDelivered ? ', delivered' : ''}: {doubt === null ? 'stands' : `in doubt; ${doubt}`}
              </span>
            </span>
            <span className="acts">
              <Link className="btn" href={href} prefetch={false}>
                To the joint
                <span className="vh">
                  {' '}
                  {joint} of {chassis}
                </span>
              </Link>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
