'use client';

import { ActForm } from '@/components/act/act-form';
import { numberOf } from '@/components/act/count-words';
import { RefusalLines } from '@/components/shop/refusal-list';
import { Glyph } from '@/components/ui/glyph';
import type { GateView } from '@/lib/wire/views/car';
import { GATE_ANCHOR } from '@/lib/wire/views/said-line';

interface GateSheetProps {
  readonly gate: GateView;
  readonly chassis: string;
  /** How many loose ends delivery waits for besides. */
  readonly ends: number;
}

/** The gate before the car: everything that keeps it closed, each with its place, and the act that passes it. */
export function GateSheet({ gate, chassis, ends }: GateSheetProps) {
  const isDelivery = gate.next === null;
  const isClosed = gate.lines.length > 0 || (isDelivery && ends > 0);
  const way = gate.next === null ? '' : ` to ${gate.next.name}`;
  return (
    <section className={isClosed ? 'refusal cgate' : 'sheet cgate'} aria-labelledby="move">
      <header>
        <Glyph name={isClosed ? 'gclosed' : 'gopen'} size={32} />
        <div>
          <h2 id={GATE_ANCHOR} tabIndex={-1}>
            {gate.name}
            {way} {isClosed ? `is closed by ${numberOf(closedBy(gate, ends), 'thing')}` : 'is open'}
          </h2>
          <p className="small dim">
            {isClosed
              ? isDelivery
                ? 'Nothing that was begun may be left: each line leads to where it is settled.'
                : `${chassis} stays where it is; each line leads to where it is cleared.`
              : 'Nothing holds the car back.'}
          </p>
        </div>
      </header>
      <RefusalLines lines={gate.lines} />
      {gate.lines.length === 0 && isDelivery && ends > 0 ? (
        <p className="also">
          <a className="do" href="#loose">
            {numberOf(ends, 'loose end')} <Glyph name="arrow" size={16} />
          </a>
        </p>
      ) : null}
      {gate.acts.map((act) => (
        <ActForm key={act.type} act={act} bare weight={isClosed ? 'plain' : 'main'} />
      ))}
    </section>
  );
}

const closedBy = ({ lines, next }: GateView, ends: number): number =>
  next === null ? Math.max(lines.length, ends) : lines.length;
