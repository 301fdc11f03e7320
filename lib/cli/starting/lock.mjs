// One starter at a time in one folder: who it is, and where it serves. Plain Node, as it is asked before the packages.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * When a process began, as its system tells it: a number alone is used again, in a container even for the same thing.
 * Empty if there is no such process.
 */
export const beganAt = (pid) => {
  if (process.platform !== 'linux')
    return spawnSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).stdout.trim();
  try {
    // The name, in brackets, may hold blanks and brackets itself; the 20th field after it is the time.
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return fields[0] === 'Z' ? '' : fields[19];
  } catch {
    return '';
  }
};

const read = (file) => {
  try {
    const { pid, began, address } = JSON.parse(readFileSync(file, 'utf8'));
    return { pid, began, address };
  } catch {
    return null;
  }
};

/** Null if it is ours now; else who has it. A lock whose holder is gone is nobody's. */
export const takeLock = (file) => {
  mkdirSync(dirname(file), { recursive: true, mode: 0o755 });
  const mine = JSON.stringify({ pid: process.pid, began: beganAt(process.pid), address: null });
  for (let attempt = 0; attempt < 5; attempt += 1) {
    try {
      writeFileSync(file, mine, { flag: 'wx' });
      return null;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const holder = read(file);
    if (holder !== null && holder.began !== '' && beganAt(holder.pid) === holder.began) return holder;
    rmSync(file, { force: true });
  }
  return { pid: null, address: null };
};

/** Said once the shop is open, for whoever starts a second one. */
export const noteAddress = (file, address) => {
  const holder = read(file);
  if (holder !== null) writeFileSync(file, JSON.stringify({ ...holder, address }));
};

export const leaveLock = (file) => {
  if (read(file)?.pid === process.pid) rmSync(file, { force: true });
};
