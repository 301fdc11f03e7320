/** A link that lets one person set their own password and PIN, once: nobody ever knows another's. */
import 'server-only';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { Person } from '@/lib/domain/shop/rows';
import type { Database } from '@/lib/server/database';
import { endSessionsOf, hashesOf, secretFaults, writeCredential } from './credentials';
import type { Secrets } from './credentials';
import type { SecretFault } from './secret-rules';
import { liftRest } from './throttle';
import { newToken, tokenHash } from './tokens';

export interface Enrolment {
  /** Goes into the link and is kept nowhere. */
  readonly token: string;
  readonly expiresAt: Date;
}

interface Making {
  readonly person: string;
  /** Null: whoever starts the shop, at its terminal. */
  readonly by: string | null;
  readonly hours?: number;
}

/** Whoever makes a link could use it: so nobody makes one for somebody who may do more. */
export const mayEnrol = (by: Person, whom: Person): boolean =>
  by.roles.includes('owner') || (by.roles.includes('lead') && !whom.roles.includes('owner'));

/** A new link; older ones of that person that nobody has used are void. */
export const makeEnrolment = async (db: Database, { person, by, hours = 72 }: Making): Promise<Enrolment> => {
  const token = newToken();
  const [, made] = await db.$transaction([
    db.$executeRaw`UPDATE enrolment SET expires_at = greatest(now(), made_at + interval '1 millisecond')
      WHERE person = ${person} AND used_at IS NULL AND expires_at > now()`,
    db.$queryRaw<{ expires_at: Date }[]>`
      INSERT INTO enrolment (token, person, made_by, made_at, expires_at)
      VALUES (${tokenHash(token)}, ${person}, ${by}, now(), now() + ${hours} * interval '1 hour')
      RETURNING expires_at`,
  ]);
  const expiresAt = made[0]?.expires_at;
  if (expiresAt === undefined) throw new Error('the link was not kept');
  return { token, expiresAt };
};

/** Who this link is for, as long as it is good. */
export interface Enrolling {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

export const enrollingOf = async (db: Database, token: string): Promise<Enrolling | null> => {
  const [found] = await db.$queryRaw<Enrolling[]>`
    SELECT p.id AS person, p.name, p.row -> 'roles' AS roles
    FROM enrolment e JOIN person p ON p.id = e.person AND NOT p."left"
    WHERE e.token = ${tokenHash(token)} AND e.used_at IS NULL AND e.expires_at > now()`;
  return found ?? null;
};

/** Owners and leads sign in by password, and sign by PIN like everybody. */
export const needsPassword = (roles: readonly Role[]): boolean =>
  roles.includes('owner') || roles.includes('lead');

export type Enrolled =
  | { readonly outcome: 'enrolled'; readonly person: string; readonly at: 'desk' | 'bench' }
  /** It was never one, was used before, or is too old. */
  | { readonly outcome: 'no-link' }
  | { readonly outcome: 'faults'; readonly faults: readonly SecretFault[] };

/** Sets the secrets and uses the link up, both or neither; ends whatever sessions the person had. */
export const enrol = async (db: Database, token: string, secrets: Secrets): Promise<Enrolled> => {
  const enrolling = await enrollingOf(db, token);
  if (enrolling === null) return { outcome: 'no-link' };
  const { person, roles } = enrolling;
  const given: Secrets = {
    pin: secrets.pin ?? '',
    ...(needsPassword(roles) ? { password: secrets.password ?? '' } : {}),
  };
  const faults = await secretFaults(db, person, given);
  if (faults.length > 0) return { outcome: 'faults', faults };
  const hashes = await hashesOf(given);
  return db.$transaction(async (tx): Promise<Enrolled> => {
    // Of two who use it at the same moment, one finds it used.
    const used = await tx.$executeRaw`
      UPDATE enrolment SET used_at = now() WHERE token = ${tokenHash(token)} AND used_at IS NULL AND expires_at > now()`;
    if (used !== 1) return { outcome: 'no-link' };
    await writeCredential(tx, person, hashes);
    await endSessionsOf(tx, person);
    await liftRest(tx, person);
    return { outcome: 'enrolled', person, at: needsPassword(roles) ? 'desk' : 'bench' };
  });
};
