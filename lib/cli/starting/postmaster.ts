/** Who runs a cluster, by the file that Postgres leaves in it. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { commandOf, endProcess, isAlive } from './processes';

export interface Postmaster {
  readonly pid: number;
  readonly port: number;
}

const pidFile = (cluster: string): string => join(cluster, 'postmaster.pid');

const readPidFile = (cluster: string): Postmaster | null => {
  try {
    const [pid, , , port] = readFileSync(pidFile(cluster), 'utf8').split('\n');
    return { pid: Math.abs(Number(pid)), port: Number(port) };
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
};

/** We always start it with `-D` and this very path: a copied folder's file, or a pid used again, names no such process. */
const runs = (pid: number, cluster: string): boolean => {
  if (!isAlive(pid)) return false;
  const words = commandOf(pid);
  return words.includes('postgres') && words.includes(`-D ${cluster} `);
};

/**
 * The postmaster that runs this cluster, left behind by a starter that died. A stale file is removed: Postgres would
 * refuse to start while some other process has its number.
 */
export const runningPostmaster = (cluster: string): Postmaster | null => {
  const said = readPidFile(cluster);
  if (said === null) return null;
  if (runs(said.pid, cluster)) return said;
  rmSync(pidFile(cluster), { force: true });
  return null;
};

/** SIGINT: no new work, running transactions rolled back, everything written. SIGQUIT only if that takes for ever. */
export const stopPostmaster = async (cluster: string): Promise<void> => {
  const found = runningPostmaster(cluster);
  if (found !== null) await endProcess(found.pid, 'SIGINT', 30_000, 'SIGQUIT');
};
