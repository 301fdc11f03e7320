'use client';

import { useId, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Field } from '@/components/ui/field';
import type { SetUpPerson } from '@/lib/wire/views/set-up';
import { AnswerLines } from './answer-lines';
import { useSending } from './use-sending';

interface QualifyDialogProps {
  readonly person: SetUpPerson;
  readonly keys: readonly string[];
  readonly onClose: () => void;
}

/** One qualification more, from a day to a day; both may be left open. */
export function QualifyDialog({ person, keys, onClose }: QualifyDialogProps) {
  const heading = useId();
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
    <Dialog open onClose={onClose} labelledBy={heading}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void give();
        }}
      >
        <header>
          <h2 id={heading}>Qualify {person.name}</h2>
        </header>
        <div className="in">
          <Field
            label="Qualification"
            hint="as the plan writes it"
            list={list}
            value={key}
            onChange={(event) => setKey(event.target.value)}
            error={sending.faultOf('qualification.key')}
            maxLength={100}
            autoComplete="off"
            required
          />
          <datalist id={list}>
            {keys.map((each) => (
              <option key={each} value={each} />
            ))}
          </datalist>
          <div className="two">
            <Field label="From" type="date" value={from} onChange={(event) => setFrom(event.target.value)} />
            <Field
              label="Until, that day too"
              type="date"
              value={until}
              min={from}
              onChange={(event) => setUntil(event.target.value)}
            />
          </div>
          <AnswerLines sending={sending} done="" />
          <div className="acts">
            <Button kind="main" type="submit" held={sending.isBusy}>
              Qualify
            </Button>
            <Button kind="quiet" onClick={onClose}>
              Not now
            </Button>
          </div>
        </div>
      </form>
    </Dialog>
  );
}
