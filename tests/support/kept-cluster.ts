/**
 * A cluster with the migrated template and the demo shop, kept for as long as what it was made from stays as it is. Each
 * run starts a copy of it: to make one takes as long as a quarter of a minute of both cores.
 */
import { chmodSync, cpSync, existsSync, lchownSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { hashOf } from '@/lib/cli/starting/hash-of';
import type { SystemUser } from '@/lib/cli/starting/postgres-user';
import { DEMO_ZONE } from '@/seed/demo-shop';
import { lastShownDay } from '@/seed/floor/calendar';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const DATA = join(ROOT, '.data');
const PREFIX = 'tests-cluster-';

const MADE_FROM = [
  ...['lib', 'seed', 'prisma/schema', 'prisma/migrations', 'package-lock.json'],
  ...['postgres-global', 'demo-cluster', 'kept-cluster'].map((name) => `tests/support/${name}.ts`),
];

/** The demo stands on a day, so tomorrow's is another one. */
const wanted = (): string => {
  const day = lastShownDay(new Date().toISOString(), DEMO_ZONE);
  return `${PREFIX}${day}-${hashOf(ROOT, MADE_FROM).slice(0, 16)}`;
};

/** Where it lies, or null if it is still to be made. */
export const keptCluster = (): string | null => {
  const folder = join(DATA, wanted());
  return existsSync(folder) ? folder : null;
};

/** Of a cluster that is stopped. */
export const copyCluster = (from: string, to: string, user: SystemUser | null): void => {
  cpSync(from, to, { recursive: true });
  chmodSync(to, 0o700);
  if (user === null) return;
  lchownSync(to, user.uid, user.gid);
  for (const name of readdirSync(to, { recursive: true, encoding: 'utf8' }))
    lchownSync(join(to, name), user.uid, user.gid);
};

/** Of a cluster that is stopped. It is there whole or not at all, and the ones of before are gone. */
export const keepCluster = (folder: string): void => {
  const name = wanted();
  const half = join(DATA, `half-${String(process.pid)}-${name}`);
  copyCluster(folder, half, null);
  for (const other of readdirSync(DATA).filter((each) => each.startsWith(PREFIX)))
    rmSync(join(DATA, other), { recursive: true, force: true });
  renameSync(half, join(DATA, name));
};
