import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import type { OrderLineView, OrderSheetView, PacksView } from '@/lib/wire/views/order';
import type { Asked } from './asked';

interface OrderSheetProps {
  readonly sheet: OrderSheetView;
  readonly onInsist: (asked: Asked) => void;
}

/** One order to one supplier. */
export function OrderSheet({ sheet, onInsist }: OrderSheetProps) {
  const { name, ordered, arrives, goods, freight, total, deposits, lines, key } = sheet;
  return (
    <section className="sheet" aria-labelledby={`sheet-${key}`}>
      <header>
        <h2 id={`sheet-${key}`}>{name}</h2>
        <span className="dim">
          ordered {ordered}, comes {arrives}
        </span>
        <span className="end">
          <span className="dim small">
            {goods}, {freight}
            {deposits === '' ? '' : `, ${deposits}`}
          </span>{' '}
          <b className="total num">{total}</b>
        </span>
      </header>
      <table>
        <thead>
          <tr>
            <th scope="col">Item, and why</th>
            <th scope="col" className="r">
              Need, by
            </th>
            <th scope="col">Packs, chosen one filled</th>
            <th scope="col">For</th>
            <th scope="col" className="r">
              Spare
            </th>
            <th scope="col" className="r">
              Cost
            </th>
            <th scope="col">
              <span className="vh">Otherwise</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line key={line.item} line={line} onInsist={onInsist} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

interface LineProps {
  readonly line: OrderLineView;
  readonly onInsist: (asked: Asked) => void;
}

function Line({ line, onInsist }: LineProps) {
  const {
    item,
    name,
    instead,
    why,
    reasons,
    need,
    by,
    orderBy,
    isLate,
    packs,
    others,
    cars,
    shelf,
    spare,
    cost,
    pin,
  } = line;
  return (
    <tr className={isLate ? 'late' : undefined}>
      <th scope="row">
        <b>{name}</b>
        {pin === null ? null : (
          <span className="small insisted">
            <Glyph name="seal" size={16} /> insisted on
          </span>
        )}
        {instead === null ? null : <span className="small">{instead}</span>}
        <details>
          <summary className="small">
            {why}
            <span className="vh">: every reason for {name}</span>
          </summary>
          <ul className="small">
            {reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </details>
      </th>
      <td className="r need">
        <b className="num">{need}</b>
        {by === null ? null : <span className={isLate ? 'small stop' : 'small'}>{by}</span>}
        {orderBy === null ? null : <span className="small dim">{orderBy}</span>}
      </td>
      <td className="packs">
        <span>
          {packs.map((each) => (
            <PackBox key={each.says} packs={each} isChosen />
          ))}
          {others.map((each) => (
            <PackBox key={`${each.says} ${each.supplier ?? ''}`} packs={each} />
          ))}
        </span>
      </td>
      <td className="for">
        <span className="tags">
          {cars.map(({ car, quantity }) => (
            <span key={car.id} className="nb">
              <CarTag chassis={car.chassis} colour={car.colour} /> {quantity}
            </span>
          ))}
          {shelf === null ? null : <span className="nb">shelf {shelf}</span>}
        </span>
      </td>
      <td className="r num spare">
        <span className="on-phone">spare </span>
        {spare}
      </td>
      <td className="r num cost">
        <b>{cost}</b>
      </td>
      <td className="otherwise">
        <Button kind="quiet" onClick={() => onInsist(line)} data-item={item}>
          Otherwise<span className="vh">: {name}</span>
        </Button>
      </td>
    </tr>
  );
}

interface PackBoxProps {
  readonly packs: PacksView;
  readonly isChosen?: boolean;
}

function PackBox({ packs: { says, cost, supplier }, isChosen = false }: PackBoxProps) {
  return (
    <span className={isChosen ? 'packbox chosen' : 'packbox'}>
      <span className="vh">{isChosen ? 'chosen: ' : 'or: '}</span>
      <b className="nb">{says}</b>
      <span className="num">
        {cost}
        {supplier === null ? '' : ` ${supplier.split(' ')[0] ?? ''}`}
      </span>
    </span>
  );
}
