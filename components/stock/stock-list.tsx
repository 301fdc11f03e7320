import Link from 'next/link';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { StockLine, StockView } from '@/lib/wire/views/stock';
import { BinCell } from './bin-cell';
import { CountFile } from './count-file';
import './stock.css';

interface StockListProps {
  readonly view: StockView;
  readonly isAll: boolean;
  readonly words: string;
}

/** Bins as one walks past them, those first that want a look. */
export function StockList({ view: { says, lines, counts }, isAll, words }: StockListProps) {
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>Stock and lots</h1>
          <p className="dim">{says}</p>
        </div>
        <p className="acts">
          <Link className="btn" href={isAll ? '/stock' : '/stock?show=all'} prefetch={false}>
            {isAll ? `Only what wants a look, ${String(counts.look)}` : `All ${String(counts.all)} places`}
          </Link>
          <Link className="btn" href="/hardware" prefetch={false}>
            Demand
          </Link>
          <Link className="btn" href="/kits" prefetch={false}>
            Kits
          </Link>
          <Link className="btn" href="/trips" prefetch={false}>
            Outside work
          </Link>
        </p>
      </div>
      <form className="sheet find" role="search" action="/stock">
        <Field
          label="Find an item, a lot or a bin"
          name="q"
          defaultValue={words}
          type="search"
          autoComplete="off"
          maxLength={60}
        />
        <button className="btn" type="submit">
          Find
        </button>
      </form>
      {lines.length === 0 ? (
        <section className="sheet nothing">
          <Glyph name={words === '' ? 'passed' : 'hint'} size={32} />
          <div>
            <h2>{words === '' ? 'Nothing wants a look' : `Nothing is called “${words}”`}</h2>
            <p>
              {words === ''
                ? 'A lot that is kept apart or runs out, and a bin that holds fewer than were fitted from it, stands here.'
                : 'Part of a name, of a key, of a lot or of a bin will do.'}
            </p>
          </div>
        </section>
      ) : (
        <section className="sheet" aria-label="Bins">
          <ul className="places">
            {lines.map((line) => (
              <li key={`${line.item} ${line.lot ?? ''}`}>
                <PlaceRow line={line} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <CountFile />
      <p className="small dim">
        A bolt in the hand with 0 here is fitted all the same and booked as found; a count is asked for. A lot
        that is kept apart, has run out or holds something else is never taken.
      </p>
    </>
  );
}

function PlaceRow({ line }: { readonly line: StockLine }) {
  const { item, name, unit, lot, came, had, isGood, state } = line;
  const href =
    lot === null ? `/stock/items/${encodeURIComponent(item)}` : `/stock/lots/${encodeURIComponent(lot)}`;
  return (
    <Link className={state.isStop ? 'place bad' : 'place'} href={href} prefetch={false}>
      <BinCell bin={line.bin} />
      <span className="t">
        <b>{name}</b>
        <span className="small dim">{item}</span>
      </span>
      <span className="t lot">
        <span className="nb">{lot ?? 'by bin'}</span>
        <span className="small dim">{came}</span>
      </span>
      <span className="had num">
        {isGood ? <b>{had}</b> : <s>{had}</s>}
        <span className="small dim">{unit}</span>
        {line.inKits === '' ? null : <span className="small dim">{line.inKits} in kits</span>}
      </span>
      <StateWords state={state} />
    </Link>
  );
}

export function StateWords({ state }: { readonly state: StockLine['state'] }) {
  return (
    <span className={state.isStop ? 'state small stop' : 'state small'}>
      {state.sign === 'passed' ? null : <Glyph name={state.sign} size={20} />}
      <span>{state.text}</span>
    </span>
  );
}
