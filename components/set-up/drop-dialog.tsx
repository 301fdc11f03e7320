'use client';

import { useId, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { SelectField } from '@/components/ui/field';
import type { SuspectReason } from '@/lib/domain/base/vocabulary';
import { AnswerLines } from './answer-lines';
import { useSending } from './use-sending';

const REASONS: readonly (readonly [SuspectReason, string])[] = [
  ['dropped', 'It fell'],
  ['lost', 'It was lost, or out of the house'],
  ['overdue', 'It was used after its calibration ran out'],
  ['as-found', 'It was found to read wrong'],
  ['other', 'Something else'],
];

interface DropDialogProps {
  readonly tool: { readonly id: string; readonly name: string };
  readonly onClose: () => void;
}

/** Anybody says it, and the tool is suspect at once: nobody signs with it until it was tested. */
export function DropDialog({ tool, onClose }: DropDialogProps) {
  const heading = useId();
  const sending = useSending();
  const [reason, setReason] = useState<SuspectReason>('dropped');
  const [from, setFrom] = useState('');

  const say = (): Promise<void> =>
    sending.send(
      {
        type: 'suspect-tool',
        tool: tool.id,
        reason,
        ...(from === '' ? {} : { from: new Date(from).toISOString() }),
      },
      `${tool.id} is suspect. Nobody signs with it until it was tested.`,
      onClose,
    );

  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void say();
        }}
      >
        <header>
          <h2 id={heading}>
            {tool.id} {tool.name}: not to be believed
          </h2>
        </header>
        <div className="in">
          <SelectField
            label="What happened"
            value={reason}
            onChange={(event) => {
              const found = REASONS.find(([each]) => each === event.target.value);
              if (found !== undefined) setReason(found[0]);
            }}
          >
            {REASONS.map(([each, says]) => (
              <option key={each} value={each}>
                {says}
              </option>
            ))}
          </SelectField>
          <div className="fld">
            <label className="label" htmlFor={`${heading}-from`}>
              Since when
            </label>
            <span className="small dim" id={`${heading}-hint`}>
              empty: from now. Every final made with it from then on is in doubt.
            </span>
            <input
              id={`${heading}-from`}
              type="datetime-local"
              aria-describedby={`${heading}-hint`}
              value={from}
              onChange={(event) => setFrom(event.target.value)}
            />
          </div>
          <AnswerLines sending={sending} done="" />
          <div className="acts">
            <Button kind="stop" type="submit" held={sending.isBusy}>
              Make it suspect
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
