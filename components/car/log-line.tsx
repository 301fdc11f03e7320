import { Glyph } from '@/components/ui/glyph';
import type { LogEntry } from '@/lib/wire/views/log';

/** What happened, and who said it. What was refused says so; what was struck is read through its line. */
export function LogLine({ entry }: { readonly entry: LogEntry }) {
  const { line, who, struck, photos = [] } = entry;
  const words = (
    <>
      {line.thing === '' ? null : <b>{line.thing}</b>} {line.says}
    </>
  );
  return (
    <>
      <Glyph name={struck === null ? line.sign : 'struck'} size={20} />
      <span className="x">
        {struck === null ? words : <s>{words}</s>}
        {photos.length === 0 ? null : (
          <span className="dim">
            {' '}
            <Glyph name="photo" size={16} /> {photos.length}{' '}
            {photos.length === 1 ? 'photograph' : 'photographs'}
          </span>
        )}
      </span>
      <span className="cellbox">
        <span className="vh">{who.name}</span>
        <span aria-hidden="true">{who.initials}</span>
      </span>
    </>
  );
}
