/** The database of an ordinary start: found, made or healed, and running. */
import { existsSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { adoptRunning, isMade, makeCluster, moveHalfMadeAside, startCluster, superUrl } from './cluster';
import type { Cluster } from './cluster';
import { isFree, someFreePort } from './free-port';
import { placeFor } from './place';
import { pause } from './processes';
import { runningPostmaster, stopPostmaster } from './postmaster';
import type { Noting } from './progress';
import { makeRoles } from './roles';
import { secretsIn } from './secrets';
import type { Secrets } from './secrets';
import { goOnUnlessStopping, isStopping, onStop } from './stopping';

export interface OwnCluster {
  /** As the superuser. */
  readonly url: string;
  readonly secrets: Secrets;
  /** Its process, if it runs. */
  readonly pid: () => number | null;
  /** Starts it again, on the same port, after it ended by itself. */
  readonly restart: () => Promise<void>;
}

const LOG_LIMIT = 5_000_000;

/** The same port each time, as long as nobody else has taken it. */
const portIn = async (file: string, { note }: Noting): Promise<number> => {
  const kept = existsSync(file) ? Number(readFileSync(file, 'utf8')) : null;
  if (kept !== null && Number.isInteger(kept) && kept > 0 && (await isFree(kept))) return kept;
  const port = await someFreePort();
  if (kept !== null) note(`port ${String(kept)} is taken, now on ${String(port)}`);
  writeFileSync(file, String(port));
  return port;
};

/** After a postmaster was killed, its workers take a moment to notice; until then Postgres refuses a new one. */
const startPatiently = async (cluster: Cluster, port: number): Promise<void> => {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await startCluster(cluster, port);
      return;
    } catch (error) {
      const isInUse = error instanceof Error && error.message.includes('is still in use');
      if (!isInUse || attempt === 20) throw error;
      await pause(500);
    }
  }
};

const keepLogShort = (log: string): void => {
  if ((statSync(log, { throwIfNoEntry: false })?.size ?? 0) > LOG_LIMIT) renameSync(log, `${log}.1`);
};

/** Left behind by a starter that died: used as it is if it answers, else ended. */
const takeOver = async (cluster: Cluster, { note }: Noting): Promise<number | null> => {
  try {
    const port = await adoptRunning(cluster);
    if (port !== null) note('was still running, taken over');
    return port;
  } catch {
    await stopPostmaster(cluster.folder);
    note('was still running and did not answer, started anew');
    return null;
  }
};

export const openOwnCluster = async (root: string, noting: Noting): Promise<OwnCluster> => {
  const data = join(root, '.data');
  const place = placeFor(root);
  const aside = moveHalfMadeAside(place.folder);
  if (aside !== null)
    noting.tell(
      `An earlier start was cut off while it made the database. What was there was moved to ${aside}.`,
    );
  const isNew = !isMade(place.folder);
  const secrets = secretsIn(join(data, 'secrets.json'), isNew);
  const log = join(data, 'database.log');
  const cluster: Cluster = { ...place, log, password: secrets.superuser };
  keepLogShort(log);
  if (isNew) {
    makeCluster(cluster, []);
    noting.note('made');
  }
  goOnUnlessStopping();
  onStop(() => stopPostmaster(place.folder));
  let port = await takeOver(cluster, noting);
  if (port === null) {
    port = await portIn(join(data, 'database-port'), noting);
    await startPatiently(cluster, port);
  }
  const url = superUrl(cluster, port);
  await makeRoles(url, secrets);
  const steady = port;
  return {
    url,
    secrets,
    pid: () => runningPostmaster(place.folder)?.pid ?? null,
    restart: async () => {
      await startPatiently(cluster, steady);
      if (isStopping()) await stopPostmaster(place.folder);
    },
  };
};
