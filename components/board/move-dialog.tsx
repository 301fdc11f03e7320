'use client';

import { useId, useState } from 'react';
import type { SubmitEvent } from 'react';
import { CarTag } from '@/components/shop/plate';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { SelectField, TextField } from '@/components/ui/field';
import { gateText } from './gate-words';
import type { CarOnTrack } from './track-drag';

interface MoveDialogProps {
  readonly on: CarOnTrack;
  /** The stage that the plate was put down in, where it is to go back. */
  readonly back: number | null;
  readonly onAdvance: (to: number) => void;
  readonly onSendBack: (to: number, reason: string) => void;
  readonly onClose: () => void;
}

/** The same as dragging, by plain buttons: on to the next stage, or back to an earlier one with a reason. */
export function MoveDialog({ on, back, onAdvance, onSendBack, onClose }: MoveDialogProps) {
  const heading = useId();
  const { car, stages } = on;
  const next = stages[car.stage + 1];
  return (
    <Dialog open onClose={onClose} labelledBy={heading}>
      <header>
        <h2 id={heading}>
          {back === null ? 'Move' : 'Send back'} <CarTag chassis={car.chassis} colour={car.colour} />
        </h2>
        <Button kind="quiet" onClick={onClose}>
          Close
        </Button>
      </header>
      {back !== null ? null : (
        <div className="in">
          <p>
            It stands in <b>{stages[car.stage]?.name}</b>. {next === undefined ? '' : gateText(car)}
          </p>
          {next === undefined ? (
            <p>That is the last stage. It is left by delivering the car.</p>
          ) : (
            <p className="acts">
              <Button kind="main" onClick={() => onAdvance(car.stage + 1)}>
                Move to {next.name}
              </Button>
              {next.room === '' ? null : (
                <span className="small dim room">
                  {next.name}: {next.room}
                </span>
              )}
            </p>
          )}
        </div>
      )}
      {car.stage === 0 ? null : <SendBack on={on} to={back} onSendBack={onSendBack} />}
    </Dialog>
  );
}

interface SendBackProps {
  readonly on: CarOnTrack;
  readonly to: number | null;
  readonly onSendBack: (to: number, reason: string) => void;
}

function SendBack({ on, to, onSendBack }: SendBackProps) {
  const { car, stages } = on;
  const [reason, setReason] = useState('');
  const [target, setTarget] = useState(to ?? car.stage - 1);
  const [missing, setMissing] = useState(false);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (reason.trim() === '') setMissing(true);
    else onSendBack(target, reason.trim());
  };
  return (
    <form className="in back" onSubmit={submit} noValidate>
      {to === null ? <h3>Or send it back</h3> : null}
      <p className="small dim">
        The gates that it passed since are asked again. Nothing that was signed is lost.
      </p>
      <SelectField
        label="To stage"
        value={target}
        onChange={(event) => setTarget(Number(event.target.value))}
      >
        {stages.slice(0, car.stage).map((stage, at) => (
          <option key={stage.key} value={at}>
            {at + 1} {stage.name}
          </option>
        ))}
      </SelectField>
      <TextField
        label="Reason"
        value={reason}
        required
        data-first={to === null ? undefined : ''}
        error={missing && reason.trim() === '' ? 'Say why it goes back.' : null}
        onChange={(event) => setReason(event.target.value)}
      />
      <p className="acts">
        <Button type="submit">Send it back to {stages[target]?.name}</Button>
      </p>
    </form>
  );
}
