'use client';

import { useState } from 'react';
import { PinDialog } from '@/components/act/pin-dialog';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import type { Approval } from '@/lib/wire/views/order';

interface ApproveProps {
  readonly approval: Approval;
  /** Null: whoever looks may not. */
  readonly approver: { readonly id: string; readonly name: string } | null;
  readonly total: string;
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** Freezes the order as it stands here: if anything of it has changed since, it is refused and says what. */
export function Approve({ approval, approver, total }: ApproveProps) {
  const sending = useSending();
  const [isSigning, setSigning] = useState(false);
  const count = approval.orders.length;
  const what = `${NUMBERS[count] ?? String(count)} ${count === 1 ? 'order' : 'orders'}`;
  if (approver === null) return <p className="small dim approve">An owner approves it.</p>;
  return (
    <div className="approve">
      <Button kind="main" onClick={() => setSigning(true)}>
        Approve {what}
      </Button>
      <p className="small dim">
        A signature: the PIN is asked. Packs and prices stay as they are here; what is on its way counts for
        the cars from now on, and what is needed later comes into a new order.
      </p>
      <AnswerLines sending={sending} done={`${what} approved.`} />
      {isSigning ? (
        <PinDialog
          people={[approver]}
          default={approver.id}
          says={`${what} for ${total}, as they stand here`}
          act="Approve"
          onPin={(signer) =>
            sending.sign({ type: 'approve-order', ...approval }, signer, `${what} approved.`)
          }
          onClose={() => setSigning(false)}
        />
      ) : null}
    </div>
  );
}
