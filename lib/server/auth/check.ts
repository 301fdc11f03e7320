/**
 * Is this their password, their PIN? The same work and the same time whether the person exists or not; tries are
 * counted; and no two tries at one person are looked at side by side, so that a burst of guesses is counted one by one.
 */
import 'server-only';
import type { Database } from '@/lib/server/database';
import { isSecretOf } from './secret-hash';
import { clearWrong, countWrong, readTries } from './throttle';
import type { Trying } from './throttle';
import { tokenHash } from './tokens';

export type Checked =
  | { readonly outcome: 'right' }
  /** `until`: it rests from now on. */
  | { readonly outcome: 'wrong'; readonly until: Date | null }
  /** It was not looked at. */
  | { readonly outcome: 'resting'; readonly until: Date };

interface Tried {
  readonly person: string;
  readonly secret: string;
  readonly device: string | null;
}

/** The password, at the desk. */
export const checkPassword = (db: Database, tried: Tried): Promise<Checked> =>
  check(db, 'passwordHash', tried, false);

/** The PIN; `isSignedIn`: it signs an act on a device where somebody is signed in already. */
export const checkPin = (db: Database, tried: Tried, isSignedIn: boolean): Promise<Checked> =>
  check(db, 'pinHash', tried, isSignedIn);

const check = (
  db: Database,
  kind: 'passwordHash' | 'pinHash',
  { person, secret, device }: Tried,
  isSignedIn: boolean,
): Promise<Checked> =>
  inTurn(person, async () => {
    const stored = await db.credential.findUnique({ where: { person } });
    const counted = stored === null ? sharedLine(person) : person;
    const tries = await readTries(db, { person: counted, device, isSignedIn });
    if (tries.until !== null) return { outcome: 'resting', until: tries.until };
    if (!(await isSecretOf(stored?.[kind] ?? null, secret)))
      return { outcome: 'wrong', until: await countWrong(db, counted, tries.place, device) };
    if (tries.wrong === 0 || (await clearWrong(db, counted, tries.place))) return { outcome: 'right' };
    const { until } = await readTries(db, { person: counted, device, isSignedIn });
    return { outcome: 'resting', until: until ?? new Date() };
  });

/** Names that nobody has share a few lines, or whoever makes them up could fill the table. */
const sharedLine = (person: string): string => `nobody ${tokenHash(person).slice(0, 2)}`;

/** Until when nothing of this person is looked at here; null = the next try would be. */
export const restOf = async (db: Database, trying: Trying): Promise<Date | null> => {
  const stored = await db.credential.findUnique({
    where: { person: trying.person },
    select: { person: true },
  });
  const person = stored === null ? sharedLine(trying.person) : trying.person;
  return (await readTries(db, { ...trying, person })).until;
};

const turns = new Map<string, Promise<unknown>>();

/** One after the other for each person. Two instances may still look at two at once: one more try than is counted. */
const inTurn = async <Value>(person: string, work: () => Promise<Value>): Promise<Value> => {
  const before = turns.get(person) ?? Promise.resolve();
  const mine = before.then(work, work);
  turns.set(person, mine);
  try {
    return await mine;
  } finally {
    if (turns.get(person) === mine) turns.delete(person);
  }
};
