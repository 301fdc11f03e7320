'use client';

import { useEffect, useRef } from 'react';
import type { ReactNode } from 'react';
import { LiveRegion } from './live-region';

interface DialogProps {
  readonly open: boolean;
  /** Also called for Escape. The focus goes back to where it was before. */
  readonly onClose: () => void;
  /** The id of its heading. Mark with `data-first` what should have the focus. */
  readonly labelledBy: string;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A native modal dialog: the page behind it is inert, Escape closes it, the focus goes in and comes back. */
export function Dialog({ open, onClose, labelledBy, className = '', children }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);

  useEffect(() => {
    const dialog = element.current;
    if (dialog === null || dialog.open === open) return;
    if (!open) {
      dialog.close();
      return;
    }
    dialog.showModal();
    // By itself the focus would go to whatever comes first, which is often the way out.
    dialog.querySelector<HTMLElement>('[data-first]')?.focus();
  }, [open]);

  return (
    <dialog
      ref={element}
      aria-labelledby={labelledBy}
      className={`dialog ${className}`.trim()}
      onClose={(event) => {
        // A select or another dialog inside closes too; only this one's own closing counts.
        if (event.target === element.current) onClose();
      }}
    >
      {open ? children : null}
      <LiveRegion />
    </dialog>
  );
}
