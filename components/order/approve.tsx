'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import type { Approval } from '@/lib/wire/views/order';

interface ApproveProps {
  readonly approval: Approval;
  readonly approver: string | null;
  readonly total: string;
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** Freezes the order as it stands here: if anything of it has changed since, it is refused and says what. */
export function Approve({ approval, approver, total }: ApproveProps) {
  const sending = useSending();
  const [isAsked, setAsked] = useState(false);
  const count = approval.orders.length;
  const what = `${NUMBERS[count] ?? String(count)} ${count === 1 ? 'order' : 'orders'}`;
  if (approver === null) return <p className="small dim approve">An owner approves it.</p>;
  const approve = (): Promise<void> =>
    sending.send({ type: 'approve-order', ...approval }, `${what} approved.`, () => setAsked(false));
  return (
    <div className="approve">
      <Button kind="main" onClick={() => setAsked(true)}>
        Approve {what}
      </Button>
      <p className="small dim">As {approver}. What is needed later comes into a new order.</p>
      {isAsked ? (
        <AskDialog
          title={`Approve ${what} for ${total}`}
          act="Approve"
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="" />}
          onAct={() => void approve()}
          onClose={() => setAsked(false)}
        >
          <p>
            Lines, packs and prices stay as they are here. What is on its way counts for the cars from now on.
            What was insisted on ends with it.
          </p>
        </AskDialog>
      ) : null}
    </div>
  );
}
