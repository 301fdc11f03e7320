'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import type { TripsView } from '@/lib/wire/views/trips';

/** Who, when, and when it is promised back; what goes along is said at the van. */
export function PlanTrip({ plan }: { readonly plan: NonNullable<TripsView['plan']> }) {
  const { next, suppliers } = plan;
  const [isOpen, setOpen] = useState(false);
  const [first] = suppliers;
  const [chosen, setChosen] = useState(first?.id ?? '');
  const found = suppliers.find(({ id }) => id === chosen);
  const [days, setDays] = useState<{ readonly goes?: string; readonly due?: string }>({});
  const goes = days.goes ?? found?.goes ?? '';
  const due = days.due ?? found?.due ?? '';
  const sending = useSending();
  const router = useRouter();
  return (
    <>
      <Button kind="main" onClick={() => setOpen(true)}>
        Plan a trip
      </Button>
      {isOpen ? (
        <AskDialog
          title={`Trip ${next}`}
          act="Plan it"
          isBusy={sending.isBusy}
          said={<AnswerLines sending={sending} done="Planned." />}
          onAct={() =>
            void sending.send(
              { type: 'open-trip', trip: next, supplier: chosen, goes, due },
              `Trip ${next} is planned.`,
              () => router.push(`/trips/${next}`),
            )
          }
          onClose={() => setOpen(false)}
        >
          {suppliers.length === 0 ? (
            <p>Nobody is on the books yet: enter who works for the shop as a supplier first.</p>
          ) : (
            <SelectField
              label="To whom"
              value={chosen}
              onChange={(event) => {
                setChosen(event.target.value);
                setDays({});
              }}
            >
              {suppliers.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </SelectField>
          )}
          <Field
            label="Goes on"
            type="date"
            required
            value={goes}
            error={sending.faultOf('goes')}
            onChange={(event) => setDays({ ...days, goes: event.target.value })}
          />
          <Field
            label="Promised back"
            type="date"
            required
            value={due}
            error={sending.faultOf('due')}
            onChange={(event) => setDays({ ...days, due: event.target.value })}
          />
        </AskDialog>
      ) : null}
    </>
  );
}
