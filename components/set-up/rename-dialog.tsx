'use client';

import { useState } from 'react';
import { Field } from '@/components/ui/field';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { useSending } from './use-sending';

interface RenameDialogProps {
  readonly person: SetUpPerson;
  readonly onClose: () => void;
}

/** Another name from now on. What they signed before keeps the name that it was signed under. */
export function RenameDialog({ person: { id, name: was }, onClose }: RenameDialogProps) {
  const [name, setName] = useState(was);
  const sending = useSending();
  const wanted = name.trim();
  const isSame = wanted === was || wanted === '';
  return (
    <AskDialog
      title={`Rename ${was}`}
      act={isSame ? 'Write the new name first' : `Call them ${wanted}`}
      isBusy={sending.isBusy || isSame}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send(
          { type: 'rename-person', person: id, name: wanted },
          `${was} is called ${wanted} from now on.`,
          onClose,
        )
      }
      onClose={onClose}
    >
      <Field
        label="Name"
        value={name}
        onChange={(event) => setName(event.target.value)}
        error={sending.faultOf('name')}
        maxLength={100}
        autoComplete="off"
        required
      />
      <p className="small">
        It is the name they sign in and sign with from now on. What was signed as {was} stays signed as {was}.
      </p>
    </AskDialog>
  );
}
