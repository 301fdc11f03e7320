'use client';

import { useState } from 'react';
import { AnswerLines } from '@/components/set-up/answer-lines';
import { AskDialog } from '@/components/set-up/ask-dialog';
import { useSending } from '@/components/set-up/use-sending';
import { Field } from '@/components/ui/field';
import { placeName, placeOf } from './place-name';
import type { PlaceDialogProps } from './place-name';

/** Where it lies from now on: a lot by itself, or the item with all its lots. */
export function PutAwayDialog({ place, onClose }: PlaceDialogProps) {
  const sending = useSending();
  const [bin, setBin] = useState(place.bin ?? '');
  const wanted = bin.trim();
  const isSame = wanted === '' || wanted === place.bin;
  return (
    <AskDialog
      title={`Put away ${placeName(place)}`}
      act={isSame ? 'Write the bin first' : `It lies in ${wanted}`}
      isBusy={sending.isBusy || isSame}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'put-away', places: [{ ...placeOf(place), bin: wanted }] },
          `${placeName(place)} lies in ${wanted} from now on.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="Bin"
        hint="a number and a letter, like 09C"
        value={bin}
        maxLength={8}
        autoComplete="off"
        onChange={(event) => setBin(event.target.value)}
        error={sending.faultOf('places[0].bin')}
        required
      />
    </AskDialog>
  );
}
