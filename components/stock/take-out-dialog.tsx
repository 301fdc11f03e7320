'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field, SelectField } from '@/components/ui/field';
import { OUT_REASONS } from '@/lib/domain/shop/stock';
import type { OutReason } from '@/lib/domain/shop/stock';
import { OUT_WORDS } from '@/lib/domain/shop/stock-words';
import { placeName, placeOf } from './place-name';
import type { PlaceDialogProps } from './place-name';

/** What goes that is in no joint: one more than the kit has, lost, scrapped, sent back. Never refused: it is gone. */
export function TakeOutDialog({ place, onClose }: PlaceDialogProps) {
  const sending = useSending();
  const [quantity, setQuantity] = useState('1');
  const [reason, setReason] = useState<OutReason>('extra-taken');
  const wanted = quantity.trim();
  return (
    <AskDialog
      title={`Take out ${placeName(place)}`}
      act={wanted === '' ? 'Write how many first' : `${wanted} went`}
      isBusy={sending.isBusy || wanted === ''}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'draw-stock', ...placeOf(place), quantity: wanted, reason },
          `${wanted} of ${placeName(place)} went.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label={`How many${place.unit === '' ? '' : `, ${place.unit}`}`}
        hint={`the books have ${place.had}; what goes into a joint is taken by the sign-off`}
        inputMode="decimal"
        autoComplete="off"
        value={quantity}
        onChange={(event) => setQuantity(event.target.value)}
        error={sending.faultOf('quantity')}
        required
      />
      <SelectField
        label="Why"
        value={reason}
        onChange={(event) => {
          const found = OUT_REASONS.find((each) => each === event.target.value);
          if (found !== undefined) setReason(found);
        }}
      >
        {OUT_REASONS.map((each) => (
          <option key={each} value={each}>
            {OUT_WORDS[each]}
          </option>
        ))}
      </SelectField>
    </AskDialog>
  );
}
