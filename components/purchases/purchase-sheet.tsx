import Link from 'next/link';
import type { PurchaseView } from '@/lib/wire/views/purchase';
import { GoodsIn } from './goods-in';
import { PurchaseActs } from './purchase-acts';
import { PrintButton } from '@/components/ui/print-button';
import './purchases.css';

/** One approved order: what was sent, what came of it, and the letter to its supplier. */
export function PurchaseSheet({ view }: { readonly view: PurchaseView }) {
  const { id, supplier, says, stand, total, goods, freight, approvedBy, deliveries, credits, mail } = view;
  const query = `subject=${encodeURIComponent(`Order ${id}`)}&body=${encodeURIComponent(view.text)}`;
  return (
    <>
      <div className="pagetop">
        <div>
          <h1>
            Order {id}, {supplier}
          </h1>
          <p className={view.isLate ? 'stop' : 'dim'}>
            {says}; {stand}.
          </p>
        </div>
        <p className="acts">
          <PrintButton what="the order" />
          <a className="btn" href={`/api/orders/${id}.csv`} download>
            As a file
          </a>
          {mail === null ? null : (
            <a className="btn" href={`mailto:${mail}?${query}`}>
              Write to {mail}
            </a>
          )}
          <Link className="btn" href="/orders" prefetch={false}>
            All orders
          </Link>
        </p>
      </div>
      <GoodsIn view={view} />
      <section className="sheet asordered" aria-labelledby="asordered">
        <header>
          <h2 id="asordered">As it was ordered</h2>
          <span className="dim">approved by {approvedBy}</span>
        </header>
        <table>
          <thead>
            <tr>
              <th scope="col">Item</th>
              <th scope="col">Their number</th>
              <th scope="col" className="r">
                Packs
              </th>
              <th scope="col" className="r">
                A pack
              </th>
              <th scope="col" className="r">
                Cost
              </th>
              <th scope="col" className="r came">
                Came
              </th>
            </tr>
          </thead>
          <tbody>
            {view.lines.map(({ item, name, number, packs, price, total: cost, came, lots }, index) => (
              <tr key={index}>
                <th scope="row">
                  <b>{name}</b>
                  <span className="small dim">{item}</span>
                </th>
                <td>{number ?? <span className="dim">·</span>}</td>
                <td className="r num">{packs}</td>
                <td className="r num">{price}</td>
                <td className="r num">{cost}</td>
                <td className="r came">
                  <span className="num">{came}</span>
                  {lots.map((lot) => (
                    <Link
                      key={lot}
                      className="small nb"
                      href={`/stock/lots/${encodeURIComponent(lot)}`}
                      prefetch={false}
                    >
                      {lot}
                    </Link>
                  ))}
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={4}>
                Goods {goods}, {freight}
              </th>
              <td className="r num">
                <b>{total}</b>
              </td>
              <td className="came" />
            </tr>
          </tfoot>
        </table>
        {deliveries.length === 0 && credits.length === 0 ? null : (
          <ul className="notes small">
            {deliveries.map((each) => (
              <li key={each}>Came in {each}</li>
            ))}
            {credits.map((each) => (
              <li key={each}>Credit {each}</li>
            ))}
          </ul>
        )}
        <PurchaseActs view={view} />
      </section>
    </>
  );
}
