'use client';

import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { useSending } from './use-sending';

interface RemoveDialogProps {
  readonly person: SetUpPerson;
  readonly onClose: () => void;
}

/** Somebody no longer works here. What they signed stays signed. */
export function RemoveDialog({ person: { id, name, atWork }, onClose }: RemoveDialogProps) {
  const sending = useSending();
  return (
    <AskDialog
      title={`${name} no longer works here`}
      act={`Remove ${name}`}
      kind="stop"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() =>
        void sending.send({ type: 'remove-person', person: id }, `${name} no longer works here.`, onClose)
      }
      onClose={onClose}
    >
      <p>
        Signed out everywhere at once, and can neither sign in nor sign. What {name} signed stays, with the
        name. It can’t be taken back: who comes again is added anew.
      </p>
      {atWork === null ? null : (
        <p>
          <b>
            {name} is at work on {atWork}.
          </b>{' '}
          It stays begun until somebody takes it over.
        </p>
      )}
    </AskDialog>
  );
}
