'use client';

import { useId, useState } from 'react';
import type { SubmitEvent } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { TextField } from '@/components/ui/field';
import { Glyph } from '@/components/ui/glyph';
import type { CarOnTrack } from './track-drag';

interface RoomDialogProps {
  readonly on: CarOnTrack;
  readonly to: number;
  readonly says: readonly string[];
  readonly onOverride: (reason: string) => void;
  readonly onClose: () => void;
}

/** The one refusal that the lead may override: a full bay or jig, with a reason that stays on the log. */
export function RoomDialog({ on, to, says, onOverride, onClose }: RoomDialogProps) {
  const heading = useId();
  const [reason, setReason] = useState('');
  const [missing, setMissing] = useState(false);
  const { car, stages } = on;
  const name = stages[to]?.name ?? '';
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (reason.trim() === '') setMissing(true);
    else onOverride(reason.trim());
  };
  return (
    <Dialog open onClose={onClose} labelledBy={heading} className="soft">
      <form onSubmit={submit} noValidate>
        <header>
          <h2 id={heading}>
            <Glyph name="gclosed" /> {name} is full
          </h2>
        </header>
        <div className="in">
          {says.map((each) => (
            <p key={each}>{each}</p>
          ))}
          <TextField
            label="Reason"
            hint="It stands on the car’s log with your name."
            value={reason}
            required
            data-first
            error={missing && reason.trim() === '' ? 'Say why it goes in all the same.' : null}
            onChange={(event) => setReason(event.target.value)}
          />
          <p className="acts">
            <Button type="submit" kind="main">
              Move {car.chassis} all the same
            </Button>
            <Button onClick={onClose}>Leave it in {stages[car.stage]?.name}</Button>
          </p>
        </div>
      </form>
    </Dialog>
  );
}
