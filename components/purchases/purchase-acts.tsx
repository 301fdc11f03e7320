'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import { END_REASONS } from '@/lib/domain/shop/purchase-rows';
import type { EndReason } from '@/lib/domain/shop/purchase-rows';
import { END_WORDS } from '@/lib/domain/shop/stock-words';
import { readMoney } from '@/lib/wire/money';
import type { PurchaseView } from '@/lib/wire/views/purchase';

type Act = 'promise' | 'end' | 'credit';

interface DialogProps {
  readonly view: PurchaseView;
  readonly onClose: () => void;
}

/** What else becomes of an order: another day, what will not come, money back. */
export function PurchaseActs({ view }: { readonly view: PurchaseView }) {
  const [act, setAct] = useState<Act | null>(null);
  const close = (): void => setAct(null);
  return (
    <p className="acts">
      {view.isOpen ? (
        <>
          <Button onClick={() => setAct('promise')}>It comes another day</Button>
          <Button onClick={() => setAct('end')}>It will not come</Button>
        </>
      ) : null}
      <Button onClick={() => setAct('credit')}>Money comes back</Button>
      {act === 'promise' ? <PromiseDialog view={view} onClose={close} /> : null}
      {act === 'end' ? <EndDialog view={view} onClose={close} /> : null}
      {act === 'credit' ? <CreditDialog view={view} onClose={close} /> : null}
    </p>
  );
}

function PromiseDialog({ view: { id, due, dueDay }, onClose }: DialogProps) {
  const sending = useSending();
  const [day, setDay] = useState(dueDay);
  const isSame = day === '' || day === dueDay;
  return (
    <AskDialog
      title={`Order ${id} comes another day`}
      act={isSame ? 'Choose the day first' : 'That is when it comes'}
      isBusy={sending.isBusy || isSame}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'promise-order', order: id, due: day },
          `Order ${id} has another day.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="Promised for"
        hint={`so far ${due}; what needs it earlier is short from now on`}
        type="date"
        value={day}
        onChange={(event) => setDay(event.target.value)}
        error={sending.faultOf('due')}
        required
      />
    </AskDialog>
  );
}

function EndDialog({ view: { id, lines }, onClose }: DialogProps) {
  const sending = useSending();
  const open = lines.flatMap((line, index) => (line.isWhole ? [] : [{ ...line, index }]));
  const [line, setLine] = useState(open.length === 1 ? String(open[0]?.index ?? '') : '');
  const [why, setWhy] = useState<EndReason>('cancelled');
  return (
    <AskDialog
      title={`What will not come of order ${id}`}
      act={line === '' ? 'None of the rest will come' : 'It will not come'}
      kind="stop"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'end-order-line', order: id, why, ...(line === '' ? {} : { line: Number(line) }) },
          `It will not come with order ${id}. What is short is in the next one.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <SelectField label="Which" value={line} onChange={(event) => setLine(event.target.value)}>
        <option value="">All that has not come</option>
        {open.map(({ index, left, name }) => (
          <option key={index} value={String(index)}>
            {left} {name}
          </option>
        ))}
      </SelectField>
      <SelectField
        label="Why"
        value={why}
        onChange={(event) => {
          const found = END_REASONS.find((each) => each === event.target.value);
          if (found !== undefined) setWhy(found);
        }}
      >
        {END_REASONS.map((each) => (
          <option key={each} value={each}>
            {END_WORDS[each]}
          </option>
        ))}
      </SelectField>
    </AskDialog>
  );
}

function CreditDialog({ view: { id, depositsOpen }, onClose }: DialogProps) {
  const sending = useSending();
  const [text, setText] = useState('');
  const [why, setWhy] = useState('');
  const [isDeposit, setDeposit] = useState(false);
  const money = readMoney(text);
  const isReady = money !== null && money > 0 && why.trim() !== '';
  return (
    <AskDialog
      title={`Money of order ${id} comes back`}
      act={isReady ? 'Record the credit' : 'Write how much, and what for'}
      isBusy={sending.isBusy || !isReady}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          {
            type: 'credit-order',
            order: id,
            money: money ?? 0,
            why: why.trim(),
            ...(isDeposit ? { isDeposit } : {}),
          },
          `A credit is recorded with order ${id}.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      {depositsOpen === '' ? null : (
        <label className="check">
          <input
            type="checkbox"
            checked={isDeposit}
            onChange={(event) => {
              setDeposit(event.target.checked);
              if (event.target.checked) setText(depositsOpen);
            }}
          />
          <span>A deposit, for an old part that was handed in</span>
        </label>
      )}
      <Field
        label="How much"
        inputMode="decimal"
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.target.value)}
        error={
          text !== '' && money === null ? 'this is no amount: write it like 4.20' : sending.faultOf('money')
        }
        required
      />
      <Field
        label="What for"
        hint="goods sent back, an old part handed in, what did not come"
        value={why}
        maxLength={200}
        autoComplete="off"
        onChange={(event) => setWhy(event.target.value)}
        error={sending.faultOf('why')}
        required
      />
    </AskDialog>
  );
}
