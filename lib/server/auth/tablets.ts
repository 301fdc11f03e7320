/**
 * The shop's own tablets. A PIN is six figures and many stand behind whoever types one, so it is taken only on a
 * browser that an owner has enrolled; a lead may revoke one that went astray. Devices stand outside the log, as
 * passwords and sessions do (D35): the row says who enrolled it and who took it off.
 */
import 'server-only';
import { randomInt } from 'node:crypto';
import type { Database } from '@/lib/server/database';
import { ownOrigin } from './setting';
import { deviceIdOf, tokenHash } from './tokens';

/** `demo`: not enrolled, but the demo shop takes every browser on its own machine for a tablet. */
export type Standing = 'tablet' | 'demo' | 'unknown' | 'revoked';

export interface DeviceFacts {
  readonly isEnrolled: boolean;
  readonly isRevoked: boolean;
  readonly isDemo: boolean;
}

const LOOPBACK: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

export const standingFrom = ({ isEnrolled, isRevoked, isDemo }: DeviceFacts): Standing => {
  if (isRevoked) return 'revoked';
  if (isEnrolled) return 'tablet';
  // By the configured address, which nobody who sends a request can write: it is served to this machine alone.
  return isDemo && LOOPBACK.has(new URL(ownOrigin()).hostname) ? 'demo' : 'unknown';
};

export const takesPins = (standing: Standing): boolean => standing === 'tablet' || standing === 'demo';

export interface KnownDevice {
  readonly standing: Standing;
  readonly name: string | null;
  readonly lockMinutes: number;
  readonly enrolledAt: Date | null;
  readonly enrolledBy: string | null;
}

interface DeviceRow extends DeviceFacts {
  readonly name: string | null;
  readonly lockMinutes: number | null;
  readonly enrolledAt: Date | null;
  readonly enrolledBy: string | null;
}

/** What is known of a browser by its cookie's name; of none, as of one that was never here. */
export const deviceOf = async (db: Database, device: string | null): Promise<KnownDevice> => {
  const [found] = await db.$queryRaw<DeviceRow[]>`
    SELECT d.name, d.lock_minutes AS "lockMinutes", d.enrolled_at AS "enrolledAt", p.name AS "enrolledBy",
      d.enrolled_at IS NOT NULL AS "isEnrolled", d.revoked_at IS NOT NULL AS "isRevoked",
      coalesce((SELECT demo FROM shop_setting WHERE id = 1), false) AS "isDemo"
    FROM (SELECT 1) one LEFT JOIN device d ON d.id = ${device} LEFT JOIN person p ON p.id = d.enrolled_by`;
  if (found === undefined) throw new Error('the device gave no line');
  return {
    standing: standingFrom(found),
    name: found.name,
    lockMinutes: found.lockMinutes ?? USUAL_MINUTES,
    enrolledAt: found.enrolledAt,
    enrolledBy: found.enrolledBy,
  };
};

export const USUAL_MINUTES = 5;

export interface Naming {
  readonly name: string;
  readonly minutes: number;
}

type Writer = Pick<Database, '$executeRaw'>;

/** Makes this browser a tablet of the shop; one that was revoked comes back by this too. */
export const enrolTablet = async (
  db: Writer,
  device: string,
  { name, minutes }: Naming,
  by: string,
): Promise<void> => {
  await db.$executeRaw`
    INSERT INTO device (id, name, enrolled_at, enrolled_by, lock_minutes) VALUES (${device}, ${name}, now(), ${by}, ${minutes})
    ON CONFLICT (id) DO UPDATE SET name = excluded.name, enrolled_at = now(), enrolled_by = excluded.enrolled_by,
      lock_minutes = excluded.lock_minutes, revoked_at = NULL, revoked_by = NULL`;
};

export const changeTablet = async (
  db: Database,
  device: string,
  { name, minutes }: Naming,
): Promise<boolean> =>
  (await db.$executeRaw`
    UPDATE device SET name = ${name}, lock_minutes = ${minutes}
    WHERE id = ${device} AND enrolled_at IS NOT NULL AND revoked_at IS NULL`) === 1;

/**
 * Takes a tablet off: every session on it ends with its next request. A session that begins in this very moment does
 * not get through either, for each request of a technician asks where the device stands.
 */
export const revokeTablet = async (db: Database, device: string, by: string): Promise<boolean> => {
  const [revoked] = await db.$transaction([
    db.$executeRaw`UPDATE device SET revoked_at = now(), revoked_by = ${by}
      WHERE id = ${device} AND enrolled_at IS NOT NULL AND revoked_at IS NULL`,
    db.$executeRaw`UPDATE session SET ended_at = now() WHERE ended_at IS NULL
      AND device = (SELECT id FROM device WHERE id = ${device} AND revoked_at IS NOT NULL)`,
  ]);
  return revoked === 1;
};

/** No 0 and O, no 1, I and L: it is read aloud across a shop. */
const SIGNS = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const CODE_LENGTH = 8;
const CODE_MINUTES = 15;

export interface TabletCode {
  readonly code: string;
  readonly expiresAt: Date;
}

/**
 * A code to type on the tablet. Eight signs of 31 within a quarter of an hour are more than anybody can try over a
 * network, so that no throttle stands before it that could shut an owner out.
 */
export const makeTabletCode = async (
  db: Database,
  { name, minutes }: Naming,
  by: string,
): Promise<TabletCode> => {
  const signs = Array.from({ length: CODE_LENGTH }, () => SIGNS[randomInt(SIGNS.length)] ?? '').join('');
  const [made] = await db.$queryRaw<{ expires_at: Date }[]>`
    INSERT INTO tablet_code (code, name, lock_minutes, made_by, made_at, expires_at)
    VALUES (${codeHash(signs)}, ${name}, ${minutes}, ${by}, now(), now() + ${CODE_MINUTES} * interval '1 minute')
    RETURNING expires_at`;
  if (made === undefined) throw new Error('the code was not kept');
  return { code: `${signs.slice(0, 4)}-${signs.slice(4)}`, expiresAt: made.expires_at };
};

const codeHash = (typed: string): string =>
  tokenHash(`tablet ${typed.toUpperCase().replace(/[^0-9A-Z]/g, '')}`);

interface UsedCode {
  readonly name: string;
  readonly minutes: number;
  readonly by: string;
}

/** Uses the code up and enrols the browser, both or neither; null: it was never one, was used, is too old. */
export const enrolByCode = (db: Database, code: string, deviceToken: string): Promise<string | null> =>
  db.$transaction(async (tx) => {
    // Who made it must still work here.
    const [used] = await tx.$queryRaw<UsedCode[]>`
      UPDATE tablet_code t SET used_at = now() FROM person p
      WHERE t.code = ${codeHash(code)} AND t.used_at IS NULL AND t.expires_at > now()
        AND p.id = t.made_by AND NOT p."left"
      RETURNING t.name, t.lock_minutes AS minutes, t.made_by AS by`;
    if (used === undefined) return null;
    await enrolTablet(tx, deviceIdOf(deviceToken), used, used.by);
    return used.name;
  });
