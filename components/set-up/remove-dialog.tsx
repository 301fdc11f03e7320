'use client';

import { useId } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { useSending } from './use-sending';

interface RemoveDialogProps {
  readonly person: SetUpPerson;
  readonly onClose: () => void;
}

/** Somebody no longer works here. What they signed stays signed. */
export function RemoveDialog({ person, onClose }: RemoveDialogProps) {
  const heading = useId();
  const sending = useSending();
  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <header>
        <h2 id={heading}>{person.name} no longer works here</h2>
      </header>
      <div className="in">
        <p>
          Signed out everywhere at once, and can neither sign in nor sign. What {person.name} signed stays,
          with the name. It can’t be taken back.
        </p>
        <AnswerLines sending={sending} done="" />
        <div className="acts">
          <Button
            kind="stop"
            held={sending.isBusy}
            onClick={() =>
              void sending.send(
                { type: 'remove-person', person: person.id },
                `${person.name} no longer works here.`,
                onClose,
              )
            }
          >
            Remove {person.name}
          </Button>
          <Button onClick={onClose}>Not now</Button>
        </div>
      </div>
    </Dialog>
  );
}
