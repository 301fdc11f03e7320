'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { RateView } from '@/lib/wire/views/cost';
import { readMoney } from '@/lib/wire/money';

interface RatesProps {
  readonly rates: readonly RateView[];
  readonly today: string;
  readonly maySet: boolean;
}

/** What an hour of the shop costs, from when. It is one figure for the shop, whoever does the work. */
export function Rates({ rates, today, maySet }: RatesProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <section className="sheet rates" aria-labelledby="rates">
      <header>
        <h2 id="rates">An hour of the shop</h2>
      </header>
      {rates.length === 0 ? (
        <p className="body dim">
          Nobody has said what an hour costs, so that hours are counted and in no sum.
          {maySet ? '' : ' An owner says it.'}
        </p>
      ) : (
        <ul className="lines3">
          {rates.map(({ id, says, isNow }) => (
            <li key={id}>
              <span className="t">{says}</span>
              <span className="small dim">{isNow ? 'now' : ''}</span>
            </li>
          ))}
        </ul>
      )}
      {maySet ? (
        <p className="acts">
          <Button onClick={() => setOpen(true)}>Set the rate</Button>
        </p>
      ) : null}
      {isOpen ? <RateDialog today={today} onClose={() => setOpen(false)} /> : null}
    </section>
  );
}

interface RateDialogProps {
  readonly today: string;
  readonly onClose: () => void;
}

function RateDialog({ today, onClose }: RateDialogProps) {
  const sending = useSending();
  const [from, setFrom] = useState(today);
  const [text, setText] = useState('');
  const money = readMoney(text);
  const isReady = money !== null && from !== '';
  return (
    <AskDialog
      title="What an hour of the shop costs"
      act={isReady ? 'Set the rate' : 'Write the day and how much'}
      isBusy={sending.isBusy || !isReady}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send({ type: 'set-rate', from, money: money ?? 0 }, 'The rate is set.', onClose)
      }
      onClose={onClose}
    >
      <Field
        label="An hour costs"
        hint="wages, rent and tools together: one figure for the shop, nobody’s pay"
        inputMode="decimal"
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.target.value)}
        error={
          text !== '' && money === null ? 'this is no amount: write it like 38.00' : sending.faultOf('money')
        }
        required
        data-first
      />
      <Field
        label="From"
        hint="hours of that day and after it; the same day once more changes it"
        type="date"
        value={from}
        onChange={(event) => setFrom(event.target.value)}
        error={sending.faultOf('from')}
        required
      />
    </AskDialog>
  );
}
