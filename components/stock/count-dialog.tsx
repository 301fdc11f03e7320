'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { placeName, placeOf } from './place-name';
import type { PlaceDialogProps } from './place-name';

/** The number is what lies there; the books give way to it. Empty until somebody has counted: nobody signs what they did not see. */
export function CountDialog({ place, onClose }: PlaceDialogProps) {
  const sending = useSending();
  const [counted, setCounted] = useState('');
  const wanted = counted.trim();
  return (
    <AskDialog
      title={`Count ${placeName(place)}`}
      act={wanted === '' ? 'Count first' : `There are ${wanted}`}
      isBusy={sending.isBusy || wanted === ''}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'count-stock', counts: [{ ...placeOf(place), counted: wanted }] },
          `${wanted} of ${placeName(place)} are on the books now.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label={`How many lie ${place.bin === null ? 'there' : `in ${place.bin}`}${place.unit === '' ? '' : `, ${place.unit}`}`}
        hint={`the books have ${place.had}`}
        inputMode="decimal"
        autoComplete="off"
        value={counted}
        onChange={(event) => setCounted(event.target.value)}
        error={sending.faultOf('counts[0].counted')}
        required
      />
    </AskDialog>
  );
}
