'use client';

import { Glyph } from '@/components/ui/glyph';
import { LockCover } from './lock-cover';
import { useCover } from './use-cover';
import './lock.css';

export interface LockedPerson {
  readonly id: string;
  readonly name: string;
  readonly initials: string;
}

interface LockScreenProps {
  readonly me: LockedPerson;
  readonly minutes: number;
  readonly startsLocked: boolean;
  readonly to: string | null;
}

/** Waits over every page: after so long without a hand it covers the page, which stays as it is beneath. */
export function LockScreen({ me, minutes, startsLocked, to }: LockScreenProps) {
  const cover = useCover({ minutes, startsLocked, to });
  return (
    <>
      <p className="lock-soon" role="status">
        {cover.isWarned ? (
          <>
            <Glyph name="lock" size={20} /> Locks in half a minute. Touch anywhere to stay.
          </>
        ) : null}
      </p>
      {cover.isLocked ? (
        <LockCover
          me={me}
          people={cover.people}
          since={cover.since}
          to={to ?? '/board'}
          onOpen={cover.open}
        />
      ) : null}
    </>
  );
}
