import { Glyph } from '@/components/ui/glyph';
import type { CostCell, CostRow, CostView } from '@/lib/wire/views/cost';

const KINDS = [
  ['material', 'Material'],
  ['hours', 'Hours'],
  ['outside', 'Outside'],
  ['freight', 'Freight'],
] as const;

/** Each stage: what it cost of what was planned, and of what. Below them the scrap, and the sum of all. */
export function StageTable({ view }: { readonly view: CostView }) {
  const { stages, sum, scrap, total, planned } = view;
  return (
    <section className="sheet" aria-labelledby="stages">
      <header>
        <h2 id="stages">By stage</h2>
        <span className="dim">so far, and below it what is planned</span>
      </header>
      <table>
        <thead>
          <tr>
            <th scope="col">Stage</th>
            {KINDS.map(([kind, says]) => (
              <th key={kind} scope="col" className="r">
                {says}
              </th>
            ))}
            <th scope="col" className="r">
              Together
            </th>
            <th scope="col" className="r">
              Against plan
            </th>
          </tr>
        </thead>
        <tbody>
          {stages.map((row) => (
            <Row key={row.key} row={row} />
          ))}
        </tbody>
        <tfoot>
          <Row row={sum} />
          <tr className="apart">
            <th scope="row" colSpan={5}>
              Scrap, apart
            </th>
            <td className="r num">
              <b>{scrap}</b>
            </td>
            <td />
          </tr>
          <tr className="all">
            <th scope="row" colSpan={5}>
              The whole car so far
            </th>
            <td className="r num">
              <b>{total}</b>
              <span className="small dim">of {planned}</span>
            </td>
            <td />
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function Row({ row }: { readonly row: CostRow }) {
  const { number, name, time, total, difference, against } = row;
  return (
    <tr>
      <th scope="row">
        <b>
          {number === null ? null : <i className="cellbox">{number}</i>} {name}
        </b>
        {time === '' ? null : <span className="small dim">{time}</span>}
      </th>
      {KINDS.map(([kind, says]) => (
        <Cell key={kind} says={says} cell={row[kind]} />
      ))}
      <Cell says="Together" cell={total} />
      <td className="r num">
        <span className="on-phone">Against plan </span>
        {against === 'over' ? <Glyph name="hint" size={16} /> : null} <b>{difference}</b>
        <span className="small dim">{against}</span>
      </td>
    </tr>
  );
}

function Cell({ says, cell: { soFar, planned } }: { readonly says: string; readonly cell: CostCell }) {
  const isNothing = soFar === '·' && planned === '·';
  return (
    <td className={isNothing ? 'r num bare' : 'r num'}>
      <span className="on-phone">{says} </span>
      {soFar}
      <span className="small dim">
        <span className="vh">planned </span>
        <span className="on-phone-in">of </span>
        {planned}
      </span>
    </td>
  );
}
