'use client';

import Link from 'next/link';
import { useEffect, useId, useRef } from 'react';
import type { RefObject } from 'react';
import { RefusalLines } from '@/components/shop/refusal-list';
import { Button } from '@/components/ui/button';
import { Glyph } from '@/components/ui/glyph';
import { announce } from '@/components/ui/live-region';
import { lineGroups } from './groups';
import { plateId } from './track-drag';
import type { Hanging } from './use-moves';

interface GatePanelProps {
  readonly hanging: Hanging;
  /** Number of the stage from whose post it hangs. */
  readonly at: number;
  readonly onClose: () => void;
}

/** Hangs from the post: everything that keeps the gate closed, each line with the place that clears it. */
export function GatePanel({ hanging, at, onClose }: GatePanelProps) {
  const heading = useId();
  const panel = useRef<HTMLElement>(null);
  const { car, title, says, lines, again } = hanging;

  useFocusInside(panel, hanging);
  useSaidAgain(panel, says);
  useEscape(onClose);

  const groups = lineGroups(lines);
  return (
    <section
      ref={panel}
      role="dialog"
      aria-labelledby={heading}
      tabIndex={-1}
      className={`refusal panel at-${at}${hanging.isRefusal ? '' : ' calm'}`}
    >
      <header>
        <Glyph name="gclosed" size={32} />
        <div>
          <h2 id={heading}>{title}</h2>
          <p className="small">{says}</p>
        </div>
        <div className="acts">
          {again === null ? null : <Button onClick={again}>Ask again</Button>}
          <Link className="btn ends" href={`/cars/${encodeURIComponent(car)}`} prefetch={false}>
            All loose ends
          </Link>
          <Button onClick={onClose}>Close</Button>
        </div>
      </header>
      <div className="scroll">
        {groups.map((group) => (
          <div key={group.title}>
            <h3 className="label">
              {group.title} <span className="num">{group.lines.length}</span>
            </h3>
            <RefusalLines lines={group.lines} />
          </div>
        ))}
      </div>
    </section>
  );
}

/** The focus goes in when it is hung, and back to where it was when it is taken down. */
const useFocusInside = (panel: RefObject<HTMLElement | null>, { car, opener }: Hanging): void => {
  useEffect(() => {
    panel.current?.focus({ preventScroll: true });
    // On a phone it lies over the foot of the page, so the car that it is about is brought above it.
    panel.current?.closest('.row')?.scrollIntoView({ block: 'nearest' });
    panel.current?.scrollIntoView({ block: 'nearest' });
    return () => {
      // Who has gone on to something else is not called back.
      if (document.activeElement !== null && document.activeElement !== document.body) return;
      const isSomewhere = opener instanceof HTMLElement && opener !== document.body && opener.isConnected;
      (isSomewhere ? opener : document.getElementById(plateId(car)))?.focus({ preventScroll: true });
    };
  }, [panel, car, opener]);
};

/** The floor moved under an open list: that is said, and a focus that stood on a line which is gone stays in here. */
const useSaidAgain = (panel: RefObject<HTMLElement | null>, says: string): void => {
  const last = useRef(says);
  useEffect(() => {
    if (last.current === says) return;
    last.current = says;
    announce(says);
    if (document.activeElement === document.body) panel.current?.focus({ preventScroll: true });
  }, [panel, says]);
};

const useEscape = (onClose: () => void): void => {
  useEffect(() => {
    const close = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && document.querySelector('dialog[open]') === null) onClose();
    };
    document.addEventListener('keydown', close);
    return () => document.removeEventListener('keydown', close);
  }, [onClose]);
};
