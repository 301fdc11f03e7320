/** Signing in: a name with a password at the desk, or with a PIN at the bench. */
import 'server-only';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { Database } from '@/lib/server/database';
import { checkPassword, checkPin, restOf } from './check';
import { needsPassword } from './enrolment';
import { TooBusy } from './secret-hash';
import { startSession } from './session-row';
import { deviceOf, takesPins } from './tablets';
import { deviceIdOf, newToken } from './tokens';

export type Door = 'desk' | 'bench';

export interface SigningIn {
  readonly door: Door;
  /** As typed at the desk, or the id of the pressed tile. */
  readonly name: string;
  readonly secret: string;
  /** What the browser's device cookie says, if it has one. */
  readonly deviceToken: string | null;
}

export type SignedIn =
  | { readonly outcome: 'in'; readonly person: string; readonly session: string }
  | { readonly outcome: 'wrong' | 'busy' }
  /** No PIN is taken on this browser, right or wrong. */
  | { readonly outcome: 'no-tablet' }
  | { readonly outcome: 'resting'; readonly until: Date };

export const signIn = async (
  db: Database,
  { door, name, secret, deviceToken }: SigningIn,
): Promise<SignedIn> => {
  const device = deviceToken === null ? null : deviceIdOf(deviceToken);
  if (door === 'bench' && !takesPins((await deviceOf(db, device)).standing)) return { outcome: 'no-tablet' };
  const tried = { person: (await personAt(db, door, name)) ?? nobody(name), secret, device };
  try {
    const checked = await (door === 'desk' ? checkPassword(db, tried) : checkPin(db, tried, false));
    if (checked.outcome === 'resting') return checked;
    if (checked.outcome === 'wrong')
      return checked.until === null ? { outcome: 'wrong' } : { outcome: 'resting', until: checked.until };
  } catch (error) {
    if (error instanceof TooBusy) return { outcome: 'busy' };
    throw error;
  }
  return {
    outcome: 'in',
    person: tried.person,
    session: await startSession(db, tried.person, deviceToken ?? newToken()),
  };
};

/** Until when the next try of this name would not be looked at; null = it would be. */
export const restUntil = async (
  db: Database,
  door: Door,
  name: string,
  deviceToken: string | null,
): Promise<Date | null> =>
  restOf(db, {
    person: (await personAt(db, door, name)) ?? nobody(name),
    device: deviceToken === null ? null : deviceIdOf(deviceToken),
    isSignedIn: false,
  });

const nobody = (name: string): string => `nobody: ${name}`;

/** Leads and owners can do harm that no PIN should open: they come by the desk only, and nobody else does. */
const personAt = async (db: Database, door: Door, name: string): Promise<string | null> => {
  const person = await personCalled(db, name);
  return person !== null && needsPassword(person.roles) === (door === 'desk') ? person.id : null;
};

interface Called {
  readonly id: string;
  readonly roles: readonly Role[];
}

/** By id, or by name in any case as long as only one has it. Whoever has left is nobody. */
const personCalled = async (db: Database, name: string): Promise<Called | null> => {
  const wanted = name.normalize('NFKC').trim();
  const found = await db.$queryRaw<Called[]>`
    SELECT id, row -> 'roles' AS roles FROM person
    WHERE NOT "left" AND (id = ${wanted} OR lower(name) = lower(${wanted}))
    LIMIT 50`;
  return found.find(({ id }) => id === wanted) ?? (found.length === 1 ? (found[0] ?? null) : null);
};
