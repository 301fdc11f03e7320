'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { readMoney } from '@/lib/wire/money';
import type { SentView } from '@/lib/wire/views/cost';

interface QuotesProps {
  readonly plan: string;
  readonly sent: readonly SentView[];
}

/** What the plan has done by other firms, and what that is expected to cost on one car. */
export function Quotes({ plan, sent }: QuotesProps) {
  const [asked, setAsked] = useState<SentView | null>(null);
  const known = sent.filter(({ money }) => money !== null).length;
  return (
    <section className="sheet quotes" aria-labelledby="quotes">
      <details>
        <summary>
          <h2 id="quotes">Planned at other firms</h2>
          <span className="dim num">
            {known} of {sent.length} priced
          </span>
        </summary>
        <ul className="lines3">
          {sent.map((line) => (
            <li key={line.key}>
              <span className="t">{line.name}</span>
              <span className="num r">{line.money ?? 'no price'}</span>
              <Button kind="quiet" onClick={() => setAsked(line)}>
                {line.money === null ? 'Say' : 'Change'}
                <span className="vh"> the price of {line.name}</span>
              </Button>
            </li>
          ))}
        </ul>
      </details>
      {asked === null ? null : <QuoteDialog plan={plan} line={asked} onClose={() => setAsked(null)} />}
    </section>
  );
}

interface QuoteDialogProps {
  readonly plan: string;
  readonly line: SentView;
  readonly onClose: () => void;
}

function QuoteDialog({ plan, line: { key, name }, onClose }: QuoteDialogProps) {
  const sending = useSending();
  const [text, setText] = useState('');
  const money = readMoney(text);
  const fault = text !== '' && money === null ? 'this is no amount: write it like 45.00' : undefined;
  return (
    <AskDialog
      title={`${name} at another firm`}
      act={money === null ? 'Write how much' : 'Say the price'}
      isBusy={sending.isBusy || money === null}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'quote-outside', plan, key, money: money ?? 0 },
          `The price of ${name} is said.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="It is expected to cost"
        hint={`on each car that is built by ${plan}, until the bill is there`}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        onChange={(event) => setText(event.target.value)}
        error={fault ?? sending.faultOf('money')}
        required
        data-first
      />
    </AskDialog>
  );
}
