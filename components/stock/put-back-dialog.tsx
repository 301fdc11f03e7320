'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { placeName, placeOf } from './place-name';
import type { PlaceDialogProps } from './place-name';

/** Taken, not used, and back on the shelf. */
export function PutBackDialog({ place, onClose }: PlaceDialogProps) {
  const sending = useSending();
  const [quantity, setQuantity] = useState('');
  const wanted = quantity.trim();
  return (
    <AskDialog
      title={`Put back ${placeName(place)}`}
      act={wanted === '' ? 'Write how many first' : `${wanted} are back`}
      isBusy={sending.isBusy || wanted === ''}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'put-back', ...placeOf(place), quantity: wanted },
          `${wanted} of ${placeName(place)} are back on the shelf.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label={`How many come back${place.unit === '' ? '' : `, ${place.unit}`}`}
        hint="unused, and good: what was tightened once and may not be again goes into the scrap"
        inputMode="decimal"
        autoComplete="off"
        value={quantity}
        onChange={(event) => setQuantity(event.target.value)}
        error={sending.faultOf('quantity')}
        required
      />
    </AskDialog>
  );
}
