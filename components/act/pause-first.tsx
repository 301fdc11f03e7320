'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { TextField } from '@/components/ui/field';
import type { Refusal } from '@/lib/domain/base/refusals';
import { useDesk } from './desk-context';

export type RunningClock = Extract<Refusal, { code: 'clock-running' }>['details'];

/** The work that a clock runs on, where nothing else is in the way. */
export const onlyClock = (refusals: readonly { readonly refusal: Refusal }[]): RunningClock | null => {
  const [first, ...others] = refusals;
  return others.length === 0 && first?.refusal.code === 'clock-running' ? first.refusal.details : null;
};

interface PauseFirstProps {
  readonly clock: RunningClock;
  /** What was tried: `Start`. */
  readonly act: string;
  readonly onPause: (leftAs: string) => void;
}

/** A person has one running clock: they leave the other work and do this, by one button. */
export function PauseFirst({ clock, act, onPause }: PauseFirstProps) {
  const { desk } = useDesk();
  const isMine = clock.person === desk.me.id;
  const [leftAs, setLeftAs] = useState('');
  return (
    <div className="in override">
      <TextField
        label={`How ${clock.operation} of ${clock.car} is left`}
        hint={
          isMine
            ? 'what whoever goes on must know; where others are on it, it goes on with them'
            : 'what whoever goes on must know; it stops for everybody who is on it'
        }
        value={leftAs}
        rows={1}
        onChange={(event) => setLeftAs(event.target.value)}
      />
      <Button kind="main" onClick={() => onPause(leftAs.trim())}>
        {isMine ? 'Leave' : 'Pause'} {clock.operation}, then {act.toLowerCase()}
      </Button>
    </div>
  );
}
