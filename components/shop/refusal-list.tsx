import Link from 'next/link';
import type { ReactNode } from 'react';
import { Glyph } from '@/components/ui/glyph';
import type { RefusalLine } from '@/lib/wire/views/said-line';

interface RefusalListProps {
  /** What was refused and what stays where; leave it out where the heading stands elsewhere. */
  readonly title?: ReactNode;
  readonly lines: readonly RefusalLine[];
  readonly titleId?: string;
}

/** Every reason, each with its sign, what is wrong, what clears it, and a link to the place that clears it. */
export function RefusalList({ title, lines, titleId }: RefusalListProps) {
  return (
    <section className="refusal" aria-labelledby={title === undefined ? undefined : titleId}>
      {title === undefined ? null : (
        <header>
          <Glyph name="gclosed" size={32} />
          <h3 id={titleId}>{title}</h3>
        </header>
      )}
      <RefusalLines lines={lines} />
    </section>
  );
}

/** Only the lines, for who brings the sheet that they stand on. */
export function RefusalLines({ lines }: { readonly lines: readonly RefusalLine[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={`${line.code} ${line.href ?? ''} ${line.says}`}>
          <Glyph name={line.sign} />
          <div>
            <b>{line.says}</b>
            {line.clears === '' ? null : <span className="fix small">{line.clears}</span>}
          </div>
          <GoThere line={line} />
          {line.under === undefined ? null : (
            <div className="under">
              <RefusalLines lines={line.under} />
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}

function GoThere({ line }: { readonly line: RefusalLine }) {
  if (line.href === null) return null;
  return (
    <Link className="do" href={line.href} prefetch={false}>
      {line.act ?? 'Go there'}
      <span className="vh">: {line.says}</span> <Glyph name="arrow" size={16} />
    </Link>
  );
}
