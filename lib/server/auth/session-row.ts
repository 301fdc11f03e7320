/** Sessions as rows: each request asks the database whether its session still holds, by the database's clock. */
import 'server-only';
import type { Person } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { SESSION_SECONDS } from './cookies';
import { needsPassword } from './enrolment';
import { idleMinutes, isIdleTooLong } from './idle';
import { standingFrom, takesPins } from './tablets';
import type { Standing } from './tablets';
import { deviceIdOf, newToken, tokenHash } from './tokens';

export interface Seat {
  readonly person: Person;
  readonly device: string;
  /** Name of the session's row. */
  readonly session: string;
  /** When a command of this device last had its answer, and the highest number that one carried (D1). */
  readonly lastContact: Date | null;
  readonly lastSequence: bigint;
  /** The shop's calendar. */
  readonly zone: string;
  /** Whether a PIN may be given here. */
  readonly standing: Standing;
  /** Its screen is covered: nothing but a PIN is taken, until the same person is back. */
  readonly isLocked: boolean;
  readonly idleMinutes: number;
}

/** Begins a session; gives what the browser's cookie carries. `deviceToken` is what its device cookie says. */
export const startSession = async (db: Database, person: string, deviceToken: string): Promise<string> => {
  const token = newToken();
  const device = deviceIdOf(deviceToken);
  await db.$transaction([
    db.$executeRaw`INSERT INTO device (id) VALUES (${device}) ON CONFLICT DO NOTHING`,
    db.$executeRaw`INSERT INTO session (id, person, device, made_at, last_seen_at)
      VALUES (${tokenHash(token)}, ${person}, ${device}, now(), now())`,
  ]);
  return token;
};

interface Found {
  readonly person: Person;
  readonly device: string;
  readonly session: string;
  readonly lastContact: Date | null;
  readonly lastSequence: bigint;
  readonly zone: string;
  readonly isStale: boolean;
  readonly isEnrolled: boolean;
  readonly isRevoked: boolean;
  readonly isDemo: boolean;
  readonly lockMinutes: number;
  readonly hasLocked: boolean;
  readonly idleSeconds: number;
}

/**
 * Whoever holds this token, unless it was ended, is too old, the person no longer works here, or may not be on this
 * device. A locked one is given too, and says so.
 */
export const seatOf = async (db: Database, token: string): Promise<Seat | null> => {
  const [found] = await db.$queryRaw<Found[]>`
    SELECT p.row AS person, s.device, s.id AS session, d.last_contact AS "lastContact",
      d.last_sequence AS "lastSequence", coalesce(o.zone, 'UTC') AS zone, coalesce(o.demo, false) AS "isDemo",
      d.enrolled_at IS NOT NULL AS "isEnrolled", d.revoked_at IS NOT NULL AS "isRevoked",
      d.lock_minutes AS "lockMinutes", s.locked_at IS NOT NULL AS "hasLocked",
      extract(epoch FROM now() - s.active_at)::float8 AS "idleSeconds",
      s.last_seen_at < now() - interval '1 minute' AS "isStale"
    FROM session s JOIN person p ON p.id = s.person JOIN device d ON d.id = s.device
      LEFT JOIN shop_setting o ON o.id = 1
    WHERE s.id = ${tokenHash(token)} AND s.ended_at IS NULL AND NOT p."left"
      AND s.made_at > now() - ${SESSION_SECONDS} * interval '1 second'`;
  if (found === undefined) return null;
  const { person, device, session, lastContact, lastSequence, zone, isStale, lockMinutes } = found;
  const standing = standingFrom(found);
  // Whoever came by a PIN is in only where PINs are taken: a tablet that is revoked has nobody on it any more.
  if (!takesPins(standing) && !needsPassword(person.roles)) return null;
  // Once a minute is as exact as anybody asks, and spares a write at each request.
  if (isStale) await db.$executeRaw`UPDATE session SET last_seen_at = now() WHERE id = ${session}`;
  const minutes = idleMinutes({ standing, lockMinutes, roles: person.roles });
  return {
    person,
    device,
    session,
    lastContact,
    lastSequence,
    zone,
    standing,
    isLocked: found.hasLocked || isIdleTooLong(minutes, found.idleSeconds),
    idleMinutes: minutes,
  };
};

/** Those of these sessions that still hold, asked all at once for the screens that are open. */
export const sessionsThatHold = async (
  db: Database,
  sessions: readonly string[],
): Promise<ReadonlySet<string>> => {
  if (sessions.length === 0) return new Set();
  const found = await db.$queryRaw<{ id: string }[]>`
    SELECT s.id FROM session s JOIN person p ON p.id = s.person
    WHERE s.id = ANY(${[...sessions]}) AND s.ended_at IS NULL AND NOT p."left"
      AND s.made_at > now() - ${SESSION_SECONDS} * interval '1 second'`;
  return new Set(found.map(({ id }) => id));
};

export const endSession = async (db: Database, session: string): Promise<void> => {
  await db.$executeRaw`UPDATE session SET ended_at = now() WHERE id = ${session} AND ended_at IS NULL`;
};

/** A command of this device had its answer: what it says was done before now would have been said before now (D1). */
export const noteContact = async (
  db: Database,
  device: string,
  now: string,
  sequence: number | undefined,
): Promise<void> => {
  await db.$executeRaw`
    UPDATE device SET last_contact = greatest(last_contact, ${now}::timestamptz),
      last_sequence = greatest(last_sequence, ${sequence ?? 0}::bigint)
    WHERE id = ${device}`;
};
