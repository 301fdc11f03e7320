import { parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { ReactNode } from 'react';
import { Gauge, GaugeAxis } from './gauge';
import type { Scale } from './gauge';

export interface ReadingRow {
  readonly id: string;
  /** What stands in the head: the fastener's number, or a step's. */
  readonly head: string;
  /** As typed; null = to come. */
  readonly text: string | null;
  readonly scale: Scale | null;
  readonly state: 'todo' | 'now' | 'in' | 'below' | 'over';
  /** The one that the keys write for, whatever stands in it already. */
  readonly isCurrent?: boolean;
  readonly says: string;
  readonly also: string;
  /** Goes back to it to give it anew; absent where that can't be. */
  readonly onPick?: () => void;
  /** A name of its own, where a number is not enough. */
  readonly name?: string;
}

interface ReadingsProps {
  /** Over the first column: `Nut`. */
  readonly heading: string;
  /** `N·m on the tool`. */
  readonly unit: string;
  readonly scale: Scale | null;
  readonly say: (value: Exact) => string;
  readonly rows: readonly ReadingRow[];
  readonly foot?: ReactNode;
}

/** Each reading in its band, in the order of the wrench. */
export function Readings({ heading, unit, scale, say, rows, foot }: ReadingsProps) {
  return (
    <section className="so-readings" aria-label="Readings">
      <div className="so-axis">
        <span className="label">{heading}</span>
        <span className="label">Reads</span>
        {scale === null ? <span /> : <GaugeAxis scale={scale} say={say} />}
        <span className="so-unit">{unit}</span>
      </div>
      <ol className={rows.length > 6 ? 'so-rows many' : 'so-rows'} tabIndex={rows.length > 6 ? 0 : undefined}>
        {rows.map((row) => (
          <li key={row.id} className={`so-row ${row.state}${row.isCurrent === true ? ' current' : ''}`}>
            <Row row={row} heading={heading} />
          </li>
        ))}
      </ol>
      {foot}
    </section>
  );
}

function Row({ row, heading }: { readonly row: ReadingRow; readonly heading: string }) {
  const { text, scale, state } = row;
  const isOut = state === 'over' || state === 'below';
  const inner = (
    <>
      <span className="so-n">
        <span className="vh">{heading} </span>
        {row.head}
      </span>
      <span className="so-v num">
        {row.name === undefined ? null : <small>{row.name}</small>}
        {text ?? '–'}
      </span>
      <span className="so-gw">
        {scale === null ? null : (
          <Gauge scale={scale} value={text === null ? null : parseDecimal(text)} isOut={isOut} />
        )}
      </span>
      <span className="so-res">
        <b className={state === 'over' ? 'stop' : state === 'in' ? 'go' : ''}>{row.says}</b>
        {row.also === '' ? null : <span>{row.also}</span>}
      </span>
    </>
  );
  return row.onPick === undefined ? (
    <div className="so-rowin">{inner}</div>
  ) : (
    <button type="button" className="so-rowin" onClick={row.onPick}>
      {inner}
      <span className="vh">, give it anew</span>
    </button>
  );
}
