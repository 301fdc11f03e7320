/** A Postgres cluster of our own: made once, started, reached. */
import { spawn, spawnSync } from 'node:child_process';
import { chownSync, closeSync, existsSync, mkdirSync, openSync, readdirSync, readFileSync } from 'node:fs';
import { renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Client } from 'pg';
import { LOOPBACK } from './free-port';
import type { Programs } from './postgres-programs';
import type { SystemUser } from './postgres-user';
import { runningPostmaster } from './postmaster';
import { isAlive, pause } from './processes';
import { StartTrouble } from './trouble';

export interface Cluster {
  readonly folder: string;
  /** Outside the folder: initdb wants an empty one, and the log outlives it. */
  readonly log: string;
  readonly programs: Programs;
  readonly user: SystemUser | null;
  /** Of the superuser `postgres`. */
  readonly password: string;
}

/** The same cluster on every machine: no locale, no time zone and no PG… variable of who happens to start it. */
const PLAIN = { PATH: process.env.PATH, NODE_ENV: process.env.NODE_ENV, TZ: 'UTC', LC_ALL: 'C' };

const stamp = (folder: string): string => join(folder, 'slipmark-initialised');

/**
 * Where an earlier start was cut off in the middle of making it, what there is is moved aside, never deleted: nobody
 * but its owner can say that nothing in it is worth keeping. Answers the new name.
 */
export const moveHalfMadeAside = (folder: string): string | null => {
  if (!existsSync(folder) || isMade(folder) || wasEmpty(folder)) return null;
  for (let n = 1; ; n += 1) {
    const aside = `${folder}.half-made-${String(n)}`;
    if (existsSync(aside)) continue;
    renameSync(folder, aside);
    return aside;
  }
};

/** initdb takes back what it wrote when it fails, all but the folder. */
const wasEmpty = (folder: string): boolean => {
  if (readdirSync(folder).length > 0) return false;
  rmdirSync(folder);
  return true;
};

export const isMade = (folder: string): boolean => existsSync(stamp(folder));

/** Sorted by code point on every system: an index built here is not broken by a new libc. */
const INITDB = [
  '--username=postgres',
  '--auth=scram-sha-256',
  '--encoding=UTF8',
  '--no-locale',
  '--data-checksums',
];
const LOCALE = ['--locale-provider=builtin', '--builtin-locale=C.UTF-8'];

export const makeCluster = (cluster: Cluster, flags: readonly string[]): void => {
  const { folder, programs, user, password } = cluster;
  // Beside the cluster, where its user can come: the system's folder for temporary files need not be such a place.
  const passwordFile = `${folder}.password`;
  mkdirSync(folder, { mode: 0o700 });
  try {
    writeFileSync(passwordFile, password, { mode: 0o600 });
    if (user !== null) for (const path of [folder, passwordFile]) chownSync(path, user.uid, user.gid);
    const args = [`--pgdata=${folder}`, `--pwfile=${passwordFile}`, ...INITDB, ...LOCALE, ...flags];
    const run = spawnSync(programs.initdb, args, { ...user, cwd: '/', env: PLAIN, encoding: 'utf8' });
    if (run.status !== 0)
      throw new Error(`initdb did not get through: ${run.error?.message ?? run.stderr.trim()}`);
  } finally {
    rmSync(passwordFile, { force: true });
  }
  writeFileSync(stamp(folder), '');
};

/** Loopback only, and no socket file: those lie in folders that not every user may write. */
const SERVER = ['listen_addresses=127.0.0.1', 'unix_socket_directories=', 'log_timezone=UTC', 'timezone=UTC'];

export const superUrl = (cluster: Cluster, port: number, database = 'postgres'): string =>
  `postgres://postgres:${cluster.password}@${LOOPBACK}:${String(port)}/${database}`;

/** Detached, so that a Ctrl-C in the terminal does not reach it before the server is through with it. */
export const startCluster = async (
  cluster: Cluster,
  port: number,
  settings: readonly string[] = [],
): Promise<void> => {
  const { folder, programs, user, log } = cluster;
  if (!isMade(folder)) throw new Error(`${folder} was never made.`);
  const args = ['-D', folder, '-p', String(port), ...[...SERVER, ...settings].flatMap((set) => ['-c', set])];
  const output = openSync(log, 'a', 0o600);
  const before = statSync(log).size;
  const server = spawn(programs.postgres, args, {
    ...user,
    cwd: '/',
    env: PLAIN,
    detached: true,
    stdio: ['ignore', output, output],
  });
  closeSync(output);
  server.unref();
  const pid = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.once('spawn', () => {
      resolve(server.pid ?? 0);
    });
  });
  // A zombie still counts as alive; once its exit was heard it does not.
  let ended = false;
  server.once('exit', () => {
    ended = true;
  });
  await untilReachable(superUrl(cluster, port), () => !ended && isAlive(pid)).catch((error: unknown) => {
    const said = readFileSync(log).subarray(before).toString('utf8').trim();
    throw said === '' ? error : new Error(`Postgres did not start. It says:\n${said.slice(-2000)}`);
  });
};

/** Takes over a postmaster that a starter left behind; null if there is none that answers. */
export const adoptRunning = async (cluster: Cluster): Promise<number | null> => {
  const found = runningPostmaster(cluster.folder);
  if (found === null) return null;
  await untilReachable(superUrl(cluster, found.port), () => isAlive(found.pid));
  return found.port;
};

/** 57P03: it is coming up, perhaps with much to recover. ECONNREFUSED: it does not listen yet. */
const NOT_YET = ['57P03', 'ECONNREFUSED', 'ECONNRESET'];

const untilReachable = async (url: string, isRunning: () => boolean): Promise<void> => {
  for (;;) {
    const client = new Client({ connectionString: url, connectionTimeoutMillis: 5000 });
    try {
      await client.connect();
      await client.end();
      return;
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? String(error.code) : '';
      if (code === '28P01')
        throw new StartTrouble(
          'The database does not take the passwords kept in .data: that file and the database do not belong together.\nPut back the one that was there, or move .data aside to begin anew.',
        );
      if (!NOT_YET.includes(code) || !isRunning()) throw error;
    }
    await pause(30);
  }
};
