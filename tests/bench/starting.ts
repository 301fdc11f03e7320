/**
 * A fresh machine to an open shop, a restart, and what the board loads: in a clone of what is committed, with no
 * packages and no database. `npm run bench:start`
 */
import { execFileSync, spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { someFreePort } from '@/lib/cli/starting/free-port';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { Client } from '@/tests/e2e/doors-client';
import { MOST_BYTES, scriptSizes, totalOf } from './board-size';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const base = mkdtempSync(join(tmpdir(), 'slipmark-bench-'));
chmodSync(base, 0o755);
const clone = join(base, 'slipmark');
execFileSync('git', ['clone', '--quiet', ROOT, clone]);
const port = await someFreePort();

/** Starts it, waits until it is open, does `meanwhile`, stops it; gives the seconds that a person waits. */
const started = async (meanwhile: (address: string) => Promise<void>): Promise<number> => {
  const began = performance.now();
  const child = spawn('npm', ['start', '--silent', '--', '--port', String(port)], {
    cwd: clone,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  const open = new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (part: Buffer) => {
      said += part.toString('utf8');
      const address = /is open after [\d.]+ s: {2}(\S+)/.exec(said)?.[1];
      if (address !== undefined) resolve(address);
    });
    child.once('close', () => {
      reject(new Error(`it ended before it was open:\n${said}`));
    });
  });
  const address = await open;
  const seconds = (performance.now() - began) / 1000;
  for (const line of said.split('\n').filter((each) => /^ {2}\S.* s\b/.test(each))) console.log(line);
  await meanwhile(address);
  const ended = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGINT');
  await ended;
  return seconds;
};

const board = async (address: string): Promise<void> => {
  const lead = DEMO_SIGN_INS.find(({ roles }) => roles.includes('lead'));
  const client = new Client(address);
  await client.signIn('desk', lead?.name ?? '', lead?.password ?? '');
  console.log(
    `board, script, gzip: ${String(totalOf(await scriptSizes(client)))} bytes, at most ${String(MOST_BYTES)}`,
  );
};

try {
  const fresh = await started(() => Promise.resolve());
  console.log(`fresh clone to open shop: ${fresh.toFixed(1)} s, at most 180`);
  for (let n = 0; n < 3; n += 1) {
    const again = await started(n === 0 ? board : () => Promise.resolve());
    console.log(`restart to open shop: ${again.toFixed(1)} s, at most 6`);
  }
} finally {
  rmSync(base, { recursive: true, force: true });
}
