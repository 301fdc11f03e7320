/** Other processes: whether they live, what they are, and ending them. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** A process of another user counts as alive: it may not be signalled, but it is there. */
export const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};

/** What `ps` says of a process, where there is no /proc. Empty if it is gone. */
const askPs = (pid: number, column: string): string => {
  const { stdout } = spawnSync('ps', ['-o', `${column}=`, '-p', String(pid)], { encoding: 'utf8' });
  return stdout.trim();
};

/** The command line of a process, its arguments parted by blanks; empty if it is gone. */
export const commandOf = (pid: number): string => {
  if (process.platform !== 'linux') return askPs(pid, 'command');
  try {
    return readFileSync(`/proc/${String(pid)}/cmdline`, 'utf8')
      .replaceAll('\0', ' ')
      .trim();
  } catch {
    return '';
  }
};

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

/** True once it is gone. */
export const waitForEnd = async (pid: number, milliseconds: number): Promise<boolean> => {
  const until = performance.now() + milliseconds;
  while (isAlive(pid)) {
    if (performance.now() > until) return false;
    await pause(20);
  }
  return true;
};

/** A process that ended between the look and the signal is no fault. */
export const signal = (pid: number, name: NodeJS.Signals): void => {
  try {
    process.kill(pid, name);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
  }
};

/** Asks, waits, and then does not ask any more. */
export const endProcess = async (
  pid: number,
  asking: NodeJS.Signals,
  patience: number,
  insisting: NodeJS.Signals,
): Promise<void> => {
  signal(pid, asking);
  if (await waitForEnd(pid, patience)) return;
  signal(pid, insisting);
  await waitForEnd(pid, patience);
};
