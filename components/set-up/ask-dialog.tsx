'use client';

import { useId } from 'react';
import type { ReactNode } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';

interface AskDialogProps {
  readonly title: ReactNode;
  /** What its one act is called, and how much it weighs. */
  readonly act: string;
  readonly kind?: 'main' | 'stop';
  readonly isBusy: boolean;
  /** What came of it, above the buttons. */
  readonly said: ReactNode;
  readonly onAct: () => void;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A question with one act and a way out: the fields or words of it, what was answered, two buttons. */
export function AskDialog({
  title,
  act,
  kind = 'main',
  isBusy,
  said,
  onAct,
  onClose,
  children,
}: AskDialogProps) {
  const heading = useId();
  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          onAct();
        }}
      >
        <header>
          <h2 id={heading}>{title}</h2>
        </header>
        <div className="in">
          {children}
          {said}
          <div className="acts">
            <Button kind={kind} type="submit" held={isBusy}>
              {act}
            </Button>
            <Button kind="quiet" onClick={onClose}>
              Not now
            </Button>
          </div>
        </div>
      </form>
    </Dialog>
  );
}
