/** A small shop to sign in to: an owner, a lead and two technicians, with secrets that only tests have. */
import pg from 'pg';
import { setCredential } from '@/lib/server/auth/credentials';
import { startSession } from '@/lib/server/auth/session-row';
import { enrolTablet } from '@/lib/server/auth/tablets';
import { deviceIdOf, newToken } from '@/lib/server/auth/tokens';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { newShop } from '@/lib/server/new-shop';
import { runCommand } from '@/lib/server/run-command';
import type { ClaimOf } from '@/lib/domain/commands';
import { freshDatabase } from '@/tests/support/postgres';
import type { FreshDatabase } from '@/tests/support/postgres';

export const SECRETS = {
  ada: { password: 'owner under a tarpaulin', pin: '804617' },
  mara: { password: 'lead behind the paint booth', pin: '271946' },
  tobit: { pin: '590372' },
  ines: { pin: '418263' },
} as const;

export const ZONE = 'Europe/London';

export interface AuthShop {
  readonly db: Database;
  /** Another instance of the app: a pool of its own on the same database. */
  readonly other: Database;
  readonly fresh: FreshDatabase;
  readonly give: (actor: string, claim: ClaimOf<'add-person'> | ClaimOf<'remove-person'>) => Promise<string>;
  /** Forgets all tries and all sessions, as nobody else may. */
  readonly reset: () => Promise<void>;
  readonly close: () => Promise<void>;
}

let given = 0;

export const authShop = async (): Promise<AuthShop> => {
  const fresh = await freshDatabase();
  const db = openDatabase(fresh.url, 5);
  const other = openDatabase(fresh.url, 5);
  const above = new pg.Client({ connectionString: fresh.superUrl });
  await above.connect();
  const give: AuthShop['give'] = async (actor, claim) => {
    const now = new Date().toISOString();
    const command = { id: `auth-${String((given += 1))}`, doneAt: now, claim };
    const answer = await runCommand(db, ZONE, {
      command,
      actor,
      present: null,
      device: null,
      lastContact: null,
      isInOrder: true,
      now,
    });
    return answer.outcome;
  };
  await newShop(
    db,
    { name: 'Quernmill Coachworks', zone: ZONE, owner: { id: 'ada', name: 'Ada Quern' } },
    new Date().toISOString(),
  );
  await give('ada', { type: 'add-person', person: 'mara', name: 'Mara Mill', roles: ['lead', 'technician'] });
  await give('ada', { type: 'add-person', person: 'tobit', name: 'Tobit Fenn', roles: ['technician'] });
  await give('ada', { type: 'add-person', person: 'ines', name: 'Ines Harrow', roles: ['technician'] });
  for (const [person, secrets] of Object.entries(SECRETS)) await setCredential(db, person, secrets);
  return {
    db,
    other,
    fresh,
    give,
    reset: async () => {
      await above.query('DELETE FROM throttle; DELETE FROM session');
    },
    close: async () => {
      await above.end();
      await db.$disconnect();
      await other.$disconnect();
      await fresh.drop();
    },
  };
};

/** The cookie of a tablet that the owner has enrolled. */
export const enrolledTablet = async (db: Database, name = 'Bench 1'): Promise<string> => {
  const cookie = newToken();
  await enrolTablet(db, deviceIdOf(cookie), { name, minutes: 5 }, 'ada');
  return cookie;
};

/** A tablet on which this person has signed in before; gives its device cookie and the session's token. */
export const knownDevice = async (
  db: Database,
  person: string,
): Promise<{ readonly cookie: string; readonly session: string }> => {
  const cookie = await enrolledTablet(db);
  return { cookie, session: await startSession(db, person, cookie) };
};

/** Turns back the clock of a person's tries, so that no test has to wait. */
export const passTime = (db: Database, seconds: number): Promise<number> =>
  db.$executeRaw`UPDATE throttle SET last_at = last_at - ${seconds} * interval '1 second',
    until = until - ${seconds} * interval '1 second'`;
