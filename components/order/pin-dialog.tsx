'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { Checks } from '@/components/set-up/checks';
import { useSending } from '@/components/set-up/use-sending';
import { Button } from '@/components/ui/button';
import { Field, SelectField } from '@/components/ui/field';
import type { Asked } from './asked';

const TODAY = 'buy it today';
const OUT = 'leave it out of this order';

interface PinDialogProps {
  readonly asked: Asked;
  readonly onClose: () => void;
}

/** What somebody insists on for an item, whatever is cheapest; the page says afterwards what it costs. */
export function PinDialog({ asked: { item, name, unit, pin, sellers }, onClose }: PinDialogProps) {
  const sending = useSending();
  const [supplier, setSupplier] = useState(pin?.supplier ?? '');
  const [quantity, setQuantity] = useState(pin?.quantity ?? '');
  const [also, setAlso] = useState<readonly string[]>([
    ...(pin?.buyToday === true ? [TODAY] : []),
    ...(pin?.isExcluded === true ? [OUT] : []),
  ]);
  const canToday = sellers.some(({ takesToday }) => takesToday);

  const insist = (): Promise<void> =>
    sending.send(
      {
        type: 'pin-line',
        item,
        ...(supplier === '' ? {} : { supplier }),
        ...(quantity.trim() === '' ? {} : { quantity: quantity.trim() }),
        ...(also.includes(TODAY) ? { buyToday: true } : {}),
        ...(also.includes(OUT) ? { exclude: true } : {}),
      },
      `The order is worked out anew with ${name} so.`,
      onClose,
    );
  const release = (): Promise<void> =>
    sending.send({ type: 'unpin-line', item }, `${name} is ordered as is cheapest again.`, onClose);

  return (
    <AskDialog
      title={name}
      act="Insist on it"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => void insist()}
      onClose={onClose}
    >
      <SelectField label="From" value={supplier} onChange={(event) => setSupplier(event.target.value)}>
        <option value="">whoever is cheapest</option>
        {sellers.map(({ id, name: seller }) => (
          <option key={id} value={id}>
            {seller}
          </option>
        ))}
      </SelectField>
      <Field
        label={`How many, ${unit}`}
        hint="empty: as many as are needed"
        value={quantity}
        onChange={(event) => setQuantity(event.target.value)}
        error={sending.faultOf('quantity')}
        inputMode="decimal"
      />
      <Checks legend="And" all={canToday ? [TODAY, OUT] : [OUT]} chosen={also} onChange={setAlso} />
      {pin === null ? null : (
        <Button kind="quiet" onClick={() => void release()} held={sending.isBusy}>
          As is cheapest again
        </Button>
      )}
    </AskDialog>
  );
}
