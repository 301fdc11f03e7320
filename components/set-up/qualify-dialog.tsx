'use client';

import { useId, useState } from 'react';
import { Field } from '@/components/ui/field';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { AskDialog } from './ask-dialog';
import { useSending } from './use-sending';

interface QualifyDialogProps {
  readonly person: SetUpPerson;
  readonly keys: readonly string[];
  readonly onClose: () => void;
}

/** One qualification more, from a day to a day; both may be left open. */
export function QualifyDialog({ person, keys, onClose }: QualifyDialogProps) {
  const list = useId();
  const sending = useSending();
  const [key, setKey] = useState('');
  const [from, setFrom] = useState('');
  const [until, setUntil] = useState('');

  const give = (): Promise<void> =>
    sending.send(
      {
        type: 'qualify-person',
        person: person.id,
        qualification: {
          key: key.trim(),
          ...(from === '' ? {} : { from }),
          ...(until === '' ? {} : { until }),
        },
      },
      `${person.name} holds ${key}.`,
      onClose,
    );

  return (
    <AskDialog
      title={`Qualify ${person.name}`}
      act="Qualify"
      isBusy={sending.isBusy}
      said={<AnswerLines sending={sending} done="" />}
      onAct={() => void give()}
      onClose={onClose}
    >
      <Field
        label="Qualification"
        hint="as the plan writes it"
        list={list}
        value={key}
        onChange={(event) => setKey(event.target.value)}
        error={sending.faultOf('qualification.key')}
        maxLength={100}
        autoComplete="off"
        data-first
        required
      />
      <datalist id={list}>
        {keys.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <div className="two">
        <Field
          label="From"
          hint="empty: from ever"
          type="date"
          value={from}
          onChange={(event) => setFrom(event.target.value)}
        />
        <Field
          label="Until, that day too"
          hint="empty: without an end"
          type="date"
          value={until}
          min={from}
          onChange={(event) => setUntil(event.target.value)}
        />
      </div>
    </AskDialog>
  );
}
