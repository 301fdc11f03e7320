'use client';

import type { ReactNode } from 'react';
import { Glyph } from '@/components/ui/glyph';
import { usePlaces } from './places';

interface FoldProps {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly count: number;
  readonly children: ReactNode;
}

/** A list that is folded until it is wanted, with its count. */
export function Fold({ id, title, says, count, children }: FoldProps) {
  const { isOpen, toggle } = usePlaces();
  const open = isOpen(id);
  return (
    <section className="cfold" id={id}>
      <h3>
        <button type="button" aria-expanded={open} onClick={() => toggle(id)}>
          <span className="n">{count}</span>
          <span className="t">
            {title} <span className="small dim">{says}</span>
          </span>
          <Glyph name="arrow" size={16} />
        </button>
      </h3>
      {open ? children : null}
    </section>
  );
}
