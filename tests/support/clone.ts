/** A copy of this project to start in, with pages that are built already and a demo shop that is quickly made. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
} from 'node:fs';
import { symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { stopPostmaster } from '@/lib/cli/starting/postmaster';
import { commandOf, endProcess, isAlive } from '@/lib/cli/starting/processes';
import { PAGES, ROOT } from './browser-global';

/** As deep as where they were built, for the links within, and not in .data, which the tests remove. */
const BUILT = 'built/pages';
const LEFT_OUT = ['.git', '.data', '.next', 'node_modules', 'coverage'];

/** `seconds` that its making takes, so that it can be cut off. */
const QUICK_DEMO = `
import type { Database } from '@/lib/server/database';
import { newShop } from '@/lib/server/new-shop';

export const seedDemo = async (db: Database): Promise<void> => {
  await newShop(db, { name: 'Quick', zone: 'UTC', owner: { id: 'ada', name: 'Ada' } }, new Date().toISOString());
  await new Promise((resolve) => setTimeout(resolve, Number(process.env.SLOW_DEMO ?? 0)));
  await db.shopSetting.update({ where: { id: 1 }, data: { demo: true } });
};
`;

/** Links, one for each package: should anything here install, it takes away links and no package. */
const linkPackages = (clone: string): void => {
  const from = join(ROOT, 'node_modules');
  const to = join(clone, 'node_modules');
  mkdirSync(to);
  for (const name of readdirSync(from))
    if (name.startsWith('.slipmark')) cpSync(join(from, name), join(to, name));
    else symlinkSync(join(from, name), join(to, name));
  const lock = readFileSync(join(clone, 'package-lock.json'));
  writeFileSync(join(to, '.slipmark-stamp'), createHash('sha256').update(lock).digest('hex'));
};

const PREFIX = 'slipmark-clone-';

/** What a run that was killed left behind is ended and removed. */
export const clearUpClones = async (): Promise<void> => {
  for (const name of readdirSync(tmpdir()).filter((entry) => entry.startsWith(PREFIX))) {
    const base = join(tmpdir(), name);
    try {
      if (isAlive(Number(readFileSync(join(base, 'run-by'), 'utf8')))) continue;
      const clone = join(base, 'slipmark');
      await endStarter(join(clone, '.data/starter.json'));
      await removeClone(clone);
    } catch {
      // Another user's.
    }
  }
};

const endStarter = async (lock: string): Promise<void> => {
  if (!existsSync(lock)) return;
  const { pid } = JSON.parse(readFileSync(lock, 'utf8')) as { pid: number };
  if (commandOf(pid).includes('lib/cli/start.mjs')) await endProcess(pid, 'SIGTERM', 10_000, 'SIGKILL');
};

export const makeClone = (base = mkdtempSync(join(tmpdir(), PREFIX))): string => {
  chmodSync(base, 0o755);
  writeFileSync(join(base, 'run-by'), String(process.pid));
  const clone = join(base, 'slipmark');
  mkdirSync(clone);
  for (const name of readdirSync(ROOT))
    if (!LEFT_OUT.includes(name)) cpSync(join(ROOT, name), join(clone, name), { recursive: true });
  linkPackages(clone);
  writeFileSync(join(clone, 'seed', 'demo.ts'), QUICK_DEMO);
  cpSync(join(ROOT, PAGES), join(clone, BUILT), { recursive: true, verbatimSymlinks: true });
  return clone;
};

export const removeClone = async (clone: string): Promise<void> => {
  await stopPostmaster(join(clone, '.data', 'cluster'));
  rmSync(join(clone, '..'), { recursive: true, force: true });
};

export interface Start {
  readonly child: ChildProcess;
  readonly said: () => string;
  /** Waits until it says so; fails with all that it said if it ends before. */
  readonly until: (words: RegExp) => Promise<RegExpExecArray>;
  /** Its exit code, once it has ended. */
  readonly ended: Promise<number | null>;
}

/** Not in the environment of the tests: there may be a database of somebody's in it. */
const NOT_OURS = ['DATABASE_URL', 'MIGRATIONS_DATABASE_URL', 'NEXTAUTH_SECRET', 'NEXTAUTH_URL', 'PORT'];

const environment = (more: Readonly<Record<string, string>>): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !NOT_OURS.includes(name))),
  NODE_ENV: 'production',
  SLIPMARK_DIST: BUILT,
  ...more,
});

export const startIn = (
  clone: string,
  args: readonly string[],
  more: Readonly<Record<string, string>> = {},
): Start => {
  const child = spawn(process.execPath, ['lib/cli/start.mjs', ...args], {
    cwd: clone,
    env: environment(more),
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  const listeners = new Set<() => void>();
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (part: Buffer) => {
      text += part.toString('utf8');
      for (const listener of listeners) listener();
    });
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  const until = (words: RegExp): Promise<RegExpExecArray> =>
    new Promise((resolve, reject) => {
      const look = (): void => {
        const found = words.exec(text);
        if (found === null) return;
        listeners.delete(look);
        resolve(found);
      };
      listeners.add(look);
      look();
      void ended.then(() => {
        reject(new Error(`It never said ${String(words)}, but:\n${text}`));
      });
    });
  return { child, said: () => text, until, ended };
};
