import { memo } from 'react';
import { Glyph } from '@/components/ui/glyph';
import type { BoardCell } from '@/lib/wire/views/board';
import { Rail } from './rail';

export type CellState = 'done' | 'now' | 'wait';

interface CellProps {
  readonly cell: BoardCell;
  readonly state: CellState;
  /** Counted from one, as people do. */
  readonly number: number;
  readonly isLast: boolean;
}

/** One stage of one car: what is due there, how much is settled, and the gate behind it where that is passed or ahead. */
export const Cell = memo(function Cell({ cell, state, number, isLast }: CellProps) {
  return (
    <div className={`cell ${state}${cell.note === null ? '' : ' bad'}`}>
      <span className="vh">
        {STATE_WORDS[state]} {cell.says}
      </span>
      <span aria-hidden="true">
        {cell.when === null ? null : <span className="when">{cell.when}</span>}
        {cell.of === 0 ? null : (
          <span className="frac">
            <b>{cell.done}</b>/{cell.of}
          </span>
        )}
        {cell.note === null ? null : <span className="nt">{cell.note}</span>}
        <span className="nr">{number}</span>
      </span>
      <Rail rail={cell.rail} />
      {isLast || state === 'now' ? null : (
        <span className={state === 'done' ? 'post passed' : 'post'} aria-hidden="true">
          {state === 'done' ? <Glyph name="gopen" size={18} /> : null}
        </span>
      )}
    </div>
  );
});

const STATE_WORDS: Readonly<Record<CellState, string>> = { done: 'Passed:', now: 'Here:', wait: 'Ahead:' };
