'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field } from '@/components/ui/field';
import type { TripView } from '@/lib/wire/views/trips';

/** They rang: it comes on another day. */
export function PromiseTrip({ view: { id, dueDay, goesDay } }: { readonly view: TripView }) {
  const [isOpen, setOpen] = useState(false);
  const [due, setDue] = useState(dueDay);
  const sending = useSending();
  return (
    <>
      <Button onClick={() => setOpen(true)}>Another day</Button>
      {isOpen ? (
        <AskDialog
          title={`Trip ${id} is promised for another day`}
          act="That day"
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="Noted." />}
          onAct={() =>
            void sending.send(
              { type: 'promise-trip', trip: id, due },
              `Trip ${id} is promised for ${due}.`,
              () => setOpen(false),
            )
          }
          onClose={() => setOpen(false)}
        >
          <Field
            label="Promised back"
            type="date"
            required
            min={goesDay}
            value={due}
            error={sending.faultOf('due')}
            onChange={(event) => setDue(event.target.value)}
          />
        </AskDialog>
      ) : null}
    </>
  );
}
