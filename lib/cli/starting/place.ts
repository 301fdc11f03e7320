/** Where our own database lies: under .data, or, where its user can't go there, under /var/lib. */
import { createHash } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { canEnter, canRun, packagedPrograms, copiedPrograms } from './postgres-programs';
import type { Programs } from './postgres-programs';
import { postgresUser } from './postgres-user';
import type { SystemUser } from './postgres-user';
import { StartTrouble } from './trouble';

export interface Place {
  /** The cluster's folder. */
  readonly folder: string;
  readonly programs: Programs;
  readonly user: SystemUser | null;
}

/** Not one that holds a database already: whoever removed .data, and with it the passwords, wants to begin anew. */
const far = (root: string): string => {
  const base = `/var/lib/slipmark-${createHash('sha256').update(root).digest('hex').slice(0, 12)}`;
  for (let n = 1; ; n += 1) {
    const one = n === 1 ? base : `${base}-${String(n)}`;
    if (!existsSync(join(one, 'cluster'))) return one;
  }
};

const noteOf = (root: string): string => join(root, '.data', 'place.json');

const remembered = (root: string): string | null => {
  if (!existsSync(noteOf(root))) return null;
  return (JSON.parse(readFileSync(noteOf(root), 'utf8')) as { base: string }).base;
};

/** The far place names its clone, so that a copy of the clone, its .data included, does not open the same database. */
const claim = (base: string, root: string): void => {
  const owner = join(base, 'clone');
  if (!existsSync(owner)) {
    mkdirSync(base, { recursive: true, mode: 0o755 });
    chmodSync(base, 0o755);
    writeFileSync(owner, root);
    return;
  }
  const other = readFileSync(owner, 'utf8');
  if (other === root) return;
  if (existsSync(noteOf(other)) && remembered(other) === base)
    throw new StartTrouble(
      `This folder is a copy of ${other}, and its note ${noteOf(root)} still points at that one's database.\nRemove ${join(root, '.data')} to begin with a database of its own.`,
    );
  // The clone was moved here; its database stays where it is.
  writeFileSync(owner, root);
};

const farPlace = (root: string, base: string): Place => {
  claim(base, root);
  const folder = join(base, 'cluster');
  const user = postgresUser(folder);
  const programs = user === null ? packagedPrograms() : copiedPrograms(base);
  writeFileSync(noteOf(root), JSON.stringify({ base }));
  return { folder, programs, user };
};

export const placeFor = (root: string): Place => {
  const data = join(root, '.data');
  mkdirSync(data, { recursive: true });
  const base = remembered(root);
  if (base !== null) return farPlace(root, base);

  const folder = join(data, 'cluster');
  const user = postgresUser(folder);
  const programs = packagedPrograms();
  if (user === null) return { folder, programs, user };
  chmodSync(data, 0o755);
  if (canRun(programs.initdb, user) && canEnter(data, user)) return { folder, programs, user };
  if (existsSync(folder))
    throw new StartTrouble(
      `The database in ${folder} can't be reached any more by the user it belongs to.\nA folder above it was closed to others: open it (chmod o+x), or move Slipmark back to where it was.`,
    );
  return farPlace(root, far(root));
};
