/** What may still be said at a covered screen: that a check whose clock runs there has failed (D55). */
import 'server-only';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Command } from '@/lib/domain/commands';
import type { Database } from '@/lib/server/database';
import { loadCar } from '@/lib/server/load/car';

/** The person who began that check: it is told as theirs, whoever pressed. Null = nothing is taken until it is unlocked. */
export const reporterWhileLocked = async (db: Database, { claim }: Command): Promise<PersonId | null> => {
  if (claim.type !== 'fail-check') return null;
  const row = (await loadCar(db, claim.car))?.checks[claim.check];
  return row?.status === 'running' ? row.by : null;
};
