'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { SentOrder } from '@/lib/wire/views/order';

interface SentProps {
  readonly orders: readonly SentOrder[];
  readonly mayCancel: boolean;
}

/** Orders on their way, each with the words for its supplier. */
export function Sent({ orders, mayCancel }: SentProps) {
  const [asked, setAsked] = useState<SentOrder | null>(null);
  return (
    <section className="sheet" aria-labelledby="sent">
      <header>
        <h2 id="sent">On its way</h2>
      </header>
      <ul className="notes">
        {orders.map((order) => (
          <li key={order.id}>
            <Glyph name="vendor" />
            <span className="t">
              <b>
                {order.id} {order.supplier}, {order.total}
              </b>
              <span className="small dim">{order.says}</span>
              <details>
                <summary className="small">
                  The order in words<span className="vh"> of {order.id}</span>
                </summary>
                <pre className="small">{order.text}</pre>
                {order.mail === null ? null : <Mail order={order} to={order.mail} />}
              </details>
            </span>
            {mayCancel ? (
              <Button kind="quiet" onClick={() => setAsked(order)}>
                Cancel<span className="vh"> {order.id}</span>
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      {asked === null ? null : <CancelDialog order={asked} onClose={() => setAsked(null)} />}
    </section>
  );
}

function Mail({ order: { id, text }, to }: { readonly order: SentOrder; readonly to: string }) {
  const query = `subject=${encodeURIComponent(`Order ${id}`)}&body=${encodeURIComponent(text)}`;
  return (
    <a className="btn" href={`mailto:${to}?${query}`}>
      Write to {to}
    </a>
  );
}

interface CancelDialogProps {
  readonly order: SentOrder;
  readonly onClose: () => void;
}

function CancelDialog({ order, onClose }: CancelDialogProps) {
  const sending = useSending();
  const [reason, setReason] = useState('');
  const cancel = (): Promise<void> =>
    sending.send(
      { type: 'cancel-order', order: order.id, reason: reason.trim() },
      `${order.id} is cancelled.`,
      onClose,
    );
  return (
    <AskDialog
      title={`Cancel ${order.id}`}
      act="It was not sent after all"
      kind="stop"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => void cancel()}
      onClose={onClose}
    >
      <Field
        label="Why"
        value={reason}
        onChange={(event) => setReason(event.target.value)}
        error={sending.faultOf('reason')}
        maxLength={200}
        required
        data-first
      />
    </AskDialog>
  );
}
