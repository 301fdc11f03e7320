'use client';

import { useState } from 'react';
import { Field, SelectField } from '@/components/ui/field';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { useSending } from './use-sending';

interface EndDialogProps {
  readonly person: SetUpPerson;
  readonly today: string;
  readonly yesterday: string;
  readonly onClose: () => void;
}

/** A qualification ends, at once or on a day. What was signed while it held stays signed. */
export function EndDialog({ person, today, yesterday, onClose }: EndDialogProps) {
  const sending = useSending();
  const keys = person.held.filter(({ mayEnd }) => mayEnd).map(({ key }) => key);
  const [key, setKey] = useState(keys[0] ?? '');
  const [last, setLast] = useState(yesterday);
  const isAtOnce = last < today;

  const end = (): Promise<void> =>
    sending.send(
      { type: 'end-qualification', person: person.id, key, last },
      `${key} of ${person.name} ends.`,
      onClose,
    );

  return (
    <AskDialog
      title={`End a qualification of ${person.name}`}
      act={isAtOnce ? `End ${key} now` : `End ${key} after that day`}
      kind="stop"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => void end()}
      onClose={onClose}
    >
      <SelectField label="Which" value={key} onChange={(event) => setKey(event.target.value)} data-first>
        {keys.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </SelectField>
      <Field
        label="Last day on which it counts"
        hint="yesterday: it ends now"
        type="date"
        value={last}
        onChange={(event) => setLast(event.target.value)}
        error={sending.faultOf('last')}
        required
      />
      <p className="small dim">What was signed while it held stays signed. It can be given again.</p>
    </AskDialog>
  );
}
