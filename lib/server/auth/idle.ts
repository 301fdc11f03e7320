/** When a session locks: after so long without a hand on it. The screen covers itself; here it is held to. */
import 'server-only';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { Database } from '@/lib/server/database';
import { needsPassword } from './enrolment';
import { USUAL_MINUTES } from './tablets';
import type { Standing } from './tablets';

const DESK_MINUTES = 60;
/** The screen tells of a hand once a minute at most, so that the server may be behind it by that much. */
const GRACE_SECONDS = 75;

interface Place {
  readonly standing: Standing;
  readonly lockMinutes: number;
  readonly roles: readonly Role[];
}

/** A tablet lies open on a bench; a desk has a door. */
export const idleMinutes = ({ standing, lockMinutes, roles }: Place): number =>
  standing === 'tablet' ? lockMinutes : needsPassword(roles) ? DESK_MINUTES : USUAL_MINUTES;

export const isIdleTooLong = (minutes: number, idleSeconds: number): boolean =>
  idleSeconds > minutes * 60 + GRACE_SECONDS;

/** A hand was on it. Not of a locked one: that takes a PIN. */
export const noteActive = async (db: Database, session: string): Promise<void> => {
  await db.$executeRaw`UPDATE session SET active_at = now()
    WHERE id = ${session} AND ended_at IS NULL AND locked_at IS NULL`;
};

export const lockSession = async (db: Database, session: string): Promise<void> => {
  await db.$executeRaw`UPDATE session SET locked_at = coalesce(locked_at, now())
    WHERE id = ${session} AND ended_at IS NULL`;
};

export const unlockSession = async (db: Database, session: string): Promise<void> => {
  await db.$executeRaw`UPDATE session SET locked_at = NULL, active_at = now()
    WHERE id = ${session} AND ended_at IS NULL`;
};
