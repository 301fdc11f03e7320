'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import { readMoney } from '@/lib/wire/money';
import type { TripView } from '@/lib/wire/views/trips';

/** What each part cost, or work on a car itself; what is left empty is on another bill. */
export function BillTrip({ view: { id, cars, works } }: { readonly view: TripView }) {
  const [isOpen, setOpen] = useState(false);
  const [money, setMoney] = useState<Readonly<Record<string, string>>>({});
  const [freight, setFreight] = useState('');
  const [note, setNote] = useState('');
  const sending = useSending();
  const rows = [
    ...cars.flatMap(({ car, parts }) =>
      // Sent twice on one trip, it is on the bill once.
      [...new Map(parts.map((part) => [part.key, part])).values()].map(({ key, name }) => ({
        car,
        key,
        name,
      })),
    ),
    ...works.map(({ car, key, name }) => ({ car, key, name: `${key} ${name}` })),
  ];
  const typed = rows.flatMap(({ car, key }) => {
    const text = money[`${car.id} ${key}`] ?? '';
    return text.trim() === '' ? [] : [{ car: car.id, part: key, money: readMoney(text) }];
  });
  const way = freight.trim() === '' ? 0 : readMoney(freight);
  const lines = typed.flatMap((line) => (line.money === null ? [] : [{ ...line, money: line.money }]));
  const isReadable = lines.length === typed.length && way !== null;
  return (
    <>
      <Button onClick={() => setOpen(true)}>Enter a bill</Button>
      {isOpen ? (
        <AskDialog
          title={`Bill of trip ${id}`}
          act={isReadable ? 'Enter it' : 'An amount can’t be read'}
          isBusy={sending.isBusy || !isReadable || (lines.length === 0 && way === 0)}
          said={<AnswerLines sending={sending} done="Entered." />}
          onAct={() => {
            if (way === null) return;
            void sending.send(
              {
                type: 'bill-trip',
                trip: id,
                lines,
                freight: way,
                ...(note.trim() === '' ? {} : { note: note.trim() }),
              },
              `The bill of trip ${id} is entered.`,
              () => {
                setMoney({});
                setFreight('');
                setNote('');
                setOpen(false);
              },
            );
          }}
          onClose={() => setOpen(false)}
        >
          {rows.map(({ car, key, name }) => {
            const field = `${car.id} ${key}`;
            const text = money[field] ?? '';
            return (
              <Field
                key={field}
                label={`${car.chassis}, ${name}`}
                inputMode="decimal"
                autoComplete="off"
                value={text}
                error={text.trim() !== '' && readMoney(text) === null ? 'an amount such as 45.00' : null}
                onChange={(event) => setMoney({ ...money, [field]: event.target.value })}
              />
            );
          })}
          <Field
            label="The way there and back"
            inputMode="decimal"
            autoComplete="off"
            value={freight}
            error={way === null ? 'an amount such as 18.00' : null}
            onChange={(event) => setFreight(event.target.value)}
          />
          <Field
            label="Number of the bill"
            value={note}
            maxLength={60}
            autoComplete="off"
            onChange={(event) => setNote(event.target.value)}
          />
        </AskDialog>
      ) : null}
    </>
  );
}
