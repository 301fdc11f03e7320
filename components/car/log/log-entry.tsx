import Link from 'next/link';
import { PhotoStrip } from '@/components/photos/photo-strip';
import { CarTag } from '@/components/shop/plate';
import { Glyph } from '@/components/ui/glyph';
import type { LogLine } from '@/lib/wire/views/log';

interface EntryProps {
  readonly line: LogLine;
  /** Where more than one car is told of, the entry says which. */
  readonly isAmongOthers: boolean;
}

/** One command: what it said, what came of it, who and when. */
export function Entry({ line: { entry, car }, isAmongOthers }: EntryProps) {
  const { line, who, brought, note, struck, isRefused, photos = [] } = entry;
  const words = (
    <>
      {line.thing === '' ? null : <b>{line.thing}</b>} {line.says}
    </>
  );
  return (
    <li className={`${isAmongOthers ? 'of ' : ''}${isRefused ? 'ref' : ''}`} id={entry.id}>
      <span className="num tm">{entry.time}</span>
      <Glyph name={struck === null ? line.sign : 'struck'} />
      {isAmongOthers ? <Of car={car} /> : null}
      <div>
        <span className="x">{struck === null ? words : <s>{words}</s>}</span>
        {struck === null ? null : <span className="sub">{struck}</span>}
        <Brought lines={brought.slice(0, MOST)} />
        {brought.length > MOST ? (
          <details>
            <summary className="small">{brought.length - MOST} more</summary>
            <Brought lines={brought.slice(MOST)} />
          </details>
        ) : null}
        <PhotoStrip photos={photos} />
        {isRefused ? <span className="small dim sub">kept as reported, not accepted</span> : null}
        {note === null ? null : <span className="small dim sub">{note}</span>}
      </div>
      {car !== null && entry.kind === 'signatures' && struck === null ? (
        <Link
          className="do"
          href={`/cars/${encodeURIComponent(car.id)}?strike=${encodeURIComponent(entry.id)}#trouble`}
          prefetch={false}
        >
          Strike<span className="vh">: {line.thing}</span>
        </Link>
      ) : null}
      <span className="cellbox">
        <span className="vh">{who.name}</span>
        <span aria-hidden="true">{who.initials}</span>
      </span>
    </li>
  );
}

/** A closed gate has many reasons: the first stand here, the rest is folded. */
const MOST = 4;

function Brought({ lines }: { readonly lines: readonly string[] }) {
  return lines.length === 0 ? null : (
    <ul className="small dim">
      {lines.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}

function Of({ car }: Pick<LogLine, 'car'>) {
  return (
    <span className="whose">
      {car === null ? (
        <span className="dim">the books</span>
      ) : (
        <CarTag chassis={car.chassis} colour={car.colour} />
      )}
    </span>
  );
}
