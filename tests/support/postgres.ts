/** A database of its own for a test: a copy of the migrated one, made in some hundredths of a second. */
import { inject } from 'vitest';
import { dropDatabase, copyDatabase, urlAs } from '@/lib/cli/starting/roles';
import { PASSWORDS, TEMPLATE } from './postgres-global';

export interface FreshDatabase {
  /** As the server connects. */
  readonly url: string;
  /** As migrations connect. */
  readonly ownerUrl: string;
  /** As nobody should: for tests that break what is sound, behind the shop's back. */
  readonly superUrl: string;
  readonly drop: () => Promise<void>;
}

let made = 0;

export const freshDatabase = async (template = TEMPLATE): Promise<FreshDatabase> => {
  const cluster = inject('postgres');
  // Files run in processes of their own, all on the one cluster.
  const name = `test_${String(process.pid)}_${String((made += 1))}`;
  await copyDatabase(cluster, name, template);
  const superUrl = new URL(cluster);
  superUrl.pathname = `/${name}`;
  return {
    url: urlAs(cluster, 'app', PASSWORDS, name),
    ownerUrl: urlAs(cluster, 'owner', PASSWORDS, name),
    superUrl: superUrl.href,
    drop: () => dropDatabase(cluster, name),
  };
};
