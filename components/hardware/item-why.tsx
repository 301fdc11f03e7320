import Link from 'next/link';
import { CarTag } from '@/components/shop/plate';
import type { HardwareItem } from '@/lib/wire/views/hardware';

interface ItemWhyProps {
  readonly item: HardwareItem;
  /** Columns of the table. */
  readonly span: number;
}

/** Each reason with its car and its day; what covers it; what a choice may still add. */
export function ItemWhy({
  item: { key: itemKey, name, need, reasons, from, waitsFor, buy },
  span,
}: ItemWhyProps) {
  return (
    <tr className="why">
      <td colSpan={span}>
        <h2>
          Why {need} {need === '1' ? 'is' : 'are'} needed{buy === null ? '' : `, and ${buy} short`}
          <span className="vh"> of {name}</span>
        </h2>
        <ul>
          {reasons.map(({ car, quantity, place, cause, by }, index) => (
            <li key={index}>
              <Link href={`/cars/${encodeURIComponent(car.id)}`} prefetch={false}>
                <CarTag chassis={car.chassis} colour={car.colour} />
              </Link>
              <b className="num">{quantity}</b>
              <span className="t">
                {place === null ? null : <Place says={place} />}
                <span className="small dim">{cause}</span>
              </span>
              <span className="small when">{by ?? ''}</span>
            </li>
          ))}
        </ul>
        <p>
          <Link className="btn quiet" href={`/stock/items/${encodeURIComponent(itemKey)}`} prefetch={false}>
            Bins and lots<span className="vh"> of {name}</span>
          </Link>
        </p>
        {from.length === 0 ? null : <p className="small">Covered: {from.join('; ')}.</p>}
        {waitsFor.length === 0 ? null : (
          <p className="small">More is needed once this is chosen: {waitsFor.join('; ')}.</p>
        )}
      </td>
    </tr>
  );
}

/** A code never breaks across lines. */
function Place({ says }: { readonly says: string }) {
  const [, name, code] = /^(.*) (\([^()]*\))$/.exec(says) ?? [];
  if (name === undefined) return <span>{says}</span>;
  return (
    <span>
      {name} <span className="nb">{code}</span>
    </span>
  );
}
