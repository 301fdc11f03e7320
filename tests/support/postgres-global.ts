/** One throw-away Postgres for all tests, with one database migrated once, of which each test gets a copy. */
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { makeCluster, startCluster, superUrl } from '@/lib/cli/starting/cluster';
import type { Cluster } from '@/lib/cli/starting/cluster';
import { someFreePort } from '@/lib/cli/starting/free-port';
import { migrate } from '@/lib/cli/starting/migrate';
import { canRun, copiedPrograms, packagedPrograms } from '@/lib/cli/starting/postgres-programs';
import { postgresUser } from '@/lib/cli/starting/postgres-user';
import { stopPostmaster } from '@/lib/cli/starting/postmaster';
import { isAlive } from '@/lib/cli/starting/processes';
import { makeDatabase, makeRoles, urlAs } from '@/lib/cli/starting/roles';
import { copyCluster, keptCluster } from './kept-cluster';

export const TEMPLATE = 'slipmark_template';
export const PASSWORDS = { owner: 'owner', app: 'app' };

declare module 'vitest' {
  interface ProvidedContext {
    /** Superuser's address of the test cluster. */
    postgres: string;
  }
}

const PREFIX = 'slipmark-postgres-';
const MIGRATIONS = fileURLToPath(new URL('../../prisma/migrations', import.meta.url));

/** Nothing here outlives the run, so nothing has to reach the disk. */
const HASTY = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=200'];

/** What a run that was killed left behind: its server is stopped, its folder removed. */
const clearUp = async (): Promise<void> => {
  for (const name of readdirSync(tmpdir()).filter((entry) => entry.startsWith(PREFIX))) {
    const folder = join(tmpdir(), name);
    try {
      if (isAlive(Number(readFileSync(join(folder, 'run-by'), 'utf8')))) continue;
      await remove(folder);
    } catch {
      // Another user's, or one that is being made this very moment.
    }
  }
};

const remove = async (folder: string): Promise<void> => {
  await stopPostmaster(join(folder, 'cluster'));
  rmSync(folder, { recursive: true, force: true });
};

export interface TestCluster {
  readonly url: string;
  readonly cluster: Cluster;
  readonly port: number;
  readonly stop: () => Promise<void>;
}

/** `settings`: a test that kills it takes the usual ones, which keep what was acknowledged. */
export const startTestCluster = async (settings: readonly string[] = HASTY): Promise<TestCluster> => {
  await clearUp();
  const base = mkdtempSync(join(tmpdir(), PREFIX));
  chmodSync(base, 0o755);
  writeFileSync(join(base, 'run-by'), String(process.pid));
  const folder = join(base, 'cluster');
  const user = postgresUser(folder);
  const packaged = packagedPrograms();
  const cluster: Cluster = {
    folder,
    log: join(base, 'log'),
    programs: user === null || canRun(packaged.initdb, user) ? packaged : copiedPrograms(base),
    user,
    password: 'postgres',
  };
  const kept = keptCluster();
  if (kept === null) makeCluster(cluster, ['--no-sync']);
  else copyCluster(kept, folder, user);
  const port = await someFreePort();
  await startCluster(cluster, port, settings);
  const url = superUrl(cluster, port);
  if (kept === null) {
    await makeRoles(url, PASSWORDS);
    await makeDatabase(url, TEMPLATE);
    await migrate(urlAs(url, 'owner', PASSWORDS, TEMPLATE), MIGRATIONS);
  }
  return { url, cluster, port, stop: () => remove(base) };
};

export default async (project: TestProject): Promise<() => Promise<void>> => {
  const { url, stop } = await startTestCluster();
  project.provide('postgres', url);
  return stop;
};
