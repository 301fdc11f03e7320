/** Postgres refuses to run as root; root lends it another user. */
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { StartTrouble } from './trouble';

export interface SystemUser {
  readonly uid: number;
  readonly gid: number;
}

const NAME = 'postgres';

const lookUp = (): SystemUser | null => {
  const [uid, gid] = ['-u', '-g'].map((flag) => {
    const { status, stdout } = spawnSync('id', [flag, NAME], { encoding: 'utf8' });
    return status === 0 ? Number.parseInt(stdout, 10) : Number.NaN;
  });
  return uid === undefined || gid === undefined || Number.isNaN(uid) || Number.isNaN(gid)
    ? null
    : { uid, gid };
};

/** Debian's, Red Hat's and Alpine's ways of making a user who can't sign in. */
const WAYS: readonly (readonly [string, ...string[]])[] = [
  ['useradd', '--system', '--user-group', '--no-create-home', '--shell', '/bin/false', NAME],
  ['adduser', '-S', '-D', '-H', '-s', '/bin/false', NAME],
];

const made = (): SystemUser => {
  for (const [program, ...args] of WAYS) {
    spawnSync(program, args, { stdio: 'ignore' });
    const user = lookUp();
    if (user !== null) return user;
  }
  throw new StartTrouble(
    `Postgres does not run as root, and no user "${NAME}" could be made for it.\nStart as an ordinary user, or make one: useradd --system ${NAME}`,
  );
};

/**
 * Null: as ourselves. A cluster that is there already runs as its owner, so that `sudo npm start` once does not lock
 * out whoever made it.
 */
export const postgresUser = (cluster: string): SystemUser | null => {
  if (process.getuid?.() !== 0) return null;
  const owner = statSync(cluster, { throwIfNoEntry: false });
  return owner !== undefined && owner.uid !== 0 ? { uid: owner.uid, gid: owner.gid } : (lookUp() ?? made());
};
