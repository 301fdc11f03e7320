'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { PurchaseView } from '@/lib/wire/views/purchase';
import { EMPTY_ENTRY, cameIn, countWords, lotsFor } from './entries';
import type { Entry } from './entries';
import { GoodsLine } from './goods-line';

/** What came, counted on the bench: good, damaged, wrong. The rest is worked out. */
export function GoodsIn({ view }: { readonly view: PurchaseView }) {
  const { id, lines, nextLot } = view;
  const [entries, setEntries] = useState<Readonly<Record<number, Entry>>>({});
  const [note, setNote] = useState('');
  const sending = useSending();
  const lots = lotsFor(lines, entries, nextLot);
  const came = cameIn(lines, entries, lots);
  const open = lines.filter(({ isWhole }) => !isWhole).length;

  const take = (): Promise<void> =>
    sending.send(
      {
        type: 'receive-order',
        order: id,
        lines: came,
        ...(note.trim() === '' ? {} : { note: note.trim() }),
      },
      `Goods of order ${id} are taken into stock.`,
      () => {
        setEntries({});
        setNote('');
      },
    );

  return (
    <form
      className="sheet goods"
      aria-labelledby="goods"
      onSubmit={(event) => {
        event.preventDefault();
        void take();
      }}
    >
      <header>
        <h2 id="goods">Goods in</h2>
        <span className="dim">
          {open === 0
            ? 'all there; what comes all the same is taken in too'
            : 'count what is there; the rest is worked out'}
        </span>
      </header>
      <ol>
        {lines.map((line, index) => (
          <GoodsLine
            key={index}
            line={line}
            entry={entries[index] ?? EMPTY_ENTRY}
            lot={lots[index] ?? null}
            onChange={(entry) => setEntries((before) => ({ ...before, [index]: entry }))}
          />
        ))}
      </ol>
      <div className="in">
        <Field
          label="Delivery note"
          hint="its number, if there is one"
          value={note}
          maxLength={100}
          autoComplete="off"
          onChange={(event) => setNote(event.target.value)}
        />
        <AnswerLines sending={sending} done="Taken into stock. What is good can be picked at once." />
        <p className="acts">
          <Button kind="main" type="submit" held={sending.isBusy || came.length === 0}>
            {came.length === 0 ? 'Count something first' : `Take into stock: ${countWords(came.length)}`}
          </Button>
        </p>
        <p className="small dim">
          Lots exist from then on. What a certificate is asked for and missing is kept apart; what is damaged
          or wrong is no stock, and still to come until its line is ended.
        </p>
      </div>
    </form>
  );
}
