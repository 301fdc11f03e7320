'use client';

import Link from 'next/link';
import { Glyph } from '@/components/ui/glyph';
import type { KitLine, ToolLine } from '@/lib/wire/views/my-work';

interface KitProps {
  readonly lines: readonly KitLine[];
  /** Where it is picked; null where it is not picked as a kit. */
  readonly kitHref: string | null;
  /** What is missing though the job is ready. */
  readonly lacks: string;
}

/** What goes in: where it lies, how many, what is new each time, and what the shelf lacks. */
export function Kit({ lines, kitHref, lacks }: KitProps) {
  if (lines.length === 0) return null;
  return (
    <section className="sheet kit" aria-labelledby="job-kit">
      <header>
        <h3 id="job-kit">Hardware</h3>
        {kitHref === null ? null : (
          <Link className="btn" href={kitHref} prefetch={false}>
            Pick the kit
          </Link>
        )}
      </header>
      {lacks === '' ? null : (
        <p className="lacks small stop">
          <Glyph name="owed" size={20} /> {lacks}
        </p>
      )}
      <ul>
        {lines.map(({ item, name, quantity, rule, isOnce, fitted, bin, lot, picked, lacks: missing }) => (
          <li key={item}>
            {bin === null ? (
              <span className="nobin small dim">no bin</span>
            ) : (
              <b className="bin">
                <span className="vh">bin </span>
                {bin}
              </b>
            )}
            <b className="q num">{quantity} ×</b>
            <span className="t">
              {name}
              <span className="small dim">
                {[lot === null ? '' : `lot ${lot}`, picked, rule, fitted]
                  .filter((each) => each !== '')
                  .join('; ')}
              </span>
              {missing === '' ? null : <span className="small stop">{missing}</span>}
            </span>
            {isOnce ? <Glyph name="onetime" size={20} /> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Those that can do it, and those that must stay on their hook. */
export function Tools({ lines }: { readonly lines: readonly ToolLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="sheet kit" aria-labelledby="job-tools">
      <header>
        <h3 id="job-tools">Tools that fit</h3>
      </header>
      <ul>
        {lines.map(({ id, name, says, whyNot }) => (
          <li key={id} className={whyNot === null ? '' : 'bad'}>
            <span className="cellbox">{id}</span>
            <span className="t">
              {whyNot === null ? name : `Leave ${id} on its hook`}
              <span className={whyNot === null ? 'small dim' : 'small stop'}>{whyNot ?? says}</span>
            </span>
            <Glyph name={whyNot === null ? 'calok' : 'caldue'} />
          </li>
        ))}
      </ul>
    </section>
  );
}
