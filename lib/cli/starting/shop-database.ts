/**
 * A shop's database in our own cluster. It is filled under another name and gets its own at the very end: what was cut
 * off half way was never served, and is simply made again.
 */
import { join } from 'node:path';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { migrate } from './migrate';
import { step } from './progress';
import type { Noting } from './progress';
import { dropDatabase, hasDatabase, makeDatabase, renameDatabase, urlAs } from './roles';
import type { RolePasswords } from './roles';
import { goOnUnlessStopping } from './stopping';

export interface Filling {
  readonly label: string;
  readonly fill: (db: Database, noting: Noting) => Promise<void>;
}

export const withDatabase = async <Value>(
  url: string,
  work: (db: Database) => Promise<Value>,
): Promise<Value> => {
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

export const fillStep = (url: string, { label, fill }: Filling): Promise<void> =>
  step(label, (noting) => withDatabase(url, (db) => fill(db, noting)));

/** Answers its address as the server connects. */
export const openShopDatabase = async (
  root: string,
  superUrl: string,
  passwords: RolePasswords,
  name: string,
  filling: Filling,
): Promise<string> => {
  const url = (role: 'owner' | 'app', database: string): string => urlAs(superUrl, role, passwords, database);
  if (await hasDatabase(superUrl, name)) {
    await migrateStep(root, url('owner', name));
    return url('app', name);
  }
  const making = `${name}_making`;
  await dropDatabase(superUrl, making);
  await makeDatabase(superUrl, making);
  await migrateStep(root, url('owner', making));
  goOnUnlessStopping();
  await fillStep(url('app', making), filling);
  goOnUnlessStopping();
  await renameDatabase(superUrl, making, name);
  return url('app', name);
};
