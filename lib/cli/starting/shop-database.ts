/**
 * A shop's database in our own cluster. It is filled under another name and gets its own at the very end: what was cut
 * off half way was never served, and is simply made again.
 */
import { join } from 'node:path';
import type { Database } from '@/lib/server/database';
import { migrate } from './migrate';
import { step } from './progress';
import type { Noting } from './progress';
import { dropDatabase, hasDatabase, makeDatabase, renameDatabase, urlAs, withClient } from './roles';
import type { RolePasswords } from './roles';
import { goOnUnlessStopping } from './stopping';

export interface Filling {
  readonly label: string;
  readonly fill: (db: Database, noting: Noting) => Promise<void>;
}

/** The client is loaded only here: on a fresh machine it has just been made, and a restart does without it. */
export const withDatabase = async <Value>(
  url: string,
  work: (db: Database) => Promise<Value>,
): Promise<Value> => {
  const { openDatabase } = await import('@/lib/server/database');
  const db = openDatabase(url, 4);
  try {
    return await work(db);
  } finally {
    await db.$disconnect();
  }
};

export const migrateStep = (root: string, url: string): Promise<void> =>
  step('migrations', async ({ note }) => {
    const applied = await migrate(url, join(root, 'prisma/migrations'));
    note(applied.length === 0 ? 'unchanged' : `${String(applied.length)} applied`);
  });

/** Made only where there is something to fill: it may have to ask somebody. */
export type MakeFilling = () => Promise<Filling>;

export const fillStep = async (url: string, make: MakeFilling): Promise<void> => {
  const { label, fill } = await make();
  goOnUnlessStopping();
  await step(label, (noting) => withDatabase(url, (db) => fill(db, noting)));
  goOnUnlessStopping();
};

const holdsShop = (url: string): Promise<boolean> =>
  withClient(url, async (client) => (await client.query('SELECT FROM shop_setting')).rowCount !== 0);

/** Answers its address as the server connects. */
export const openShopDatabase = async (
  root: string,
  superUrl: string,
  passwords: RolePasswords,
  name: string,
  filling: MakeFilling,
): Promise<string> => {
  const url = (role: 'owner' | 'app', database: string): string => urlAs(superUrl, role, passwords, database);
  if (await hasDatabase(superUrl, name)) {
    await migrateStep(root, url('owner', name));
    // There but without a shop: somebody made it by hand.
    if (!(await holdsShop(url('app', name)))) await fillStep(url('app', name), filling);
    return url('app', name);
  }
  const making = `${name}_making`;
  await dropDatabase(superUrl, making);
  await makeDatabase(superUrl, making);
  await migrateStep(root, url('owner', making));
  await fillStep(url('app', making), filling);
  await renameDatabase(superUrl, making, name);
  return url('app', name);
};
