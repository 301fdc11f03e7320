'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { placeName, placeOf } from './place-name';
import type { PlaceDialogProps } from './place-name';
import { add, parseDecimal } from '@/lib/domain/base/exact';
import { stockText } from '@/lib/domain/shop/stock';

/** The number is what lies there; what lies in kits is known and comes on top. The books give way to it. Empty until somebody has counted: nobody signs what they did not see. */
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
          { type: 'count-stock', counts: [{ ...placeOf(place), counted: withKits(wanted, place.inKits) }] },
          `${wanted} of ${placeName(place)} are on the books now.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label={`How many lie ${place.bin === null ? 'there' : `in ${place.bin}`}${place.unit === '' ? '' : `, ${place.unit}`}`}
        hint={`the books have ${place.had}${place.inKits === '' ? '' : `; ${place.inKits} of them lie in kits and are not counted here`}`}
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

/** What can't be read is sent as it is: the rules say what is wrong with it. */
const withKits = (counted: string, inKits: string): string => {
  const [there, aside] = [parseDecimal(counted), parseDecimal(inKits)];
  return there === null || aside === null ? counted : stockText(add(there, aside));
};
