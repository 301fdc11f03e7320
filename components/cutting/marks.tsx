import { Fragment } from 'react';
import { CarTag } from '@/components/shop/plate';
import type { CutItem } from '@/lib/wire/views/cutting';

/** What each mark is: the part, its length, how many in all, and for which cars. */
export function CutMarks({ item: { key, name, marks } }: { readonly item: CutItem }) {
  return (
    <section className="sheet" aria-labelledby={`marks-${key}`}>
      <header>
        <h2 id={`marks-${key}`}>{capital(name)}, by mark</h2>
      </header>
      <table>
        <thead>
          <tr>
            <th scope="col">Mark</th>
            <th scope="col">Part</th>
            <th scope="col">Car</th>
            <th scope="col" className="r">
              Length
            </th>
            <th scope="col" className="r">
              Pieces
            </th>
          </tr>
        </thead>
        <tbody>
          {marks.map(({ mark, part, codes, length, count, cars }) => (
            <tr key={mark}>
              <th scope="row">
                <span className="cellbox">{mark}</span>
              </th>
              <td>
                {part}
                {codes.map((code) => (
                  <Fragment key={code}>
                    {' '}
                    <span className="small dim nb">{code}</span>
                  </Fragment>
                ))}
              </td>
              <td className="for">
                {cars.map(({ car, count: each }) => (
                  <span key={car.id} className="num">
                    <CarTag chassis={car.chassis} colour={car.colour} />
                    {cars.length < 2 ? null : ` ${String(each)}`}
                  </span>
                ))}
              </td>
              <td className="r num">{length}</td>
              <td className="r num">
                <b>{count}</b>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** An item is written as its catalogue has it, `tube 60×40×3`; here it begins a line. */
export const capital = (name: string): string => `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
