// `npm start`: sees to the packages, then hands over to TypeScript. Plain Node with built-ins only.
import { spawn } from 'node:child_process';
import { statfsSync } from 'node:fs';
import { join } from 'node:path';
import { exitCodeOf, forwardSignals, installIfNeeded, isInstalled, root } from './install.mjs';
import { leaveLock, noteAddress, takeLock } from './starting/lock.mjs';
import { readOptions } from './starting/options.mjs';

const giveUp = (says) => {
  process.stderr.write(`\n${says}\n`);
  process.exit(1);
};

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19))
  giveUp(`Slipmark needs Node 20.19 or newer; this is ${process.version}.`);

const { options, says, exit } = readOptions(process.argv.slice(2), process.env);
if (says) {
  process[exit === 0 ? 'stdout' : 'stderr'].write(says);
  process.exit(exit);
}

const lock = join(root, '.data', 'starter.json');

/** Asked before the work, because a disk that fills in the middle speaks in a different tongue at each place. */
function checkRoom() {
  const needed = isInstalled() ? 100 : 1500;
  const { blocks, bavail, bsize } = statfsSync(root);
  const free = Math.floor((bavail * bsize) / 1_000_000);
  if (blocks > 0 && free < needed)
    giveUp(
      `The disk is full: ${free} MB are free at ${root}, and ${needed} MB are needed${isInstalled() ? '' : ' for the packages'}.\n` +
        'Make room and run the same command again.',
    );
}

function lockOrSayWho() {
  try {
    const holder = takeLock(lock);
    if (holder === null) return;
    giveUp(
      holder.address === null
        ? `Slipmark is just being started by process ${holder.pid}. Wait for it, or stop it with Ctrl-C where it runs.`
        : `Slipmark is open already: ${holder.address} (process ${holder.pid}).\nStop that one with Ctrl-C, or kill ${holder.pid}, to start anew: one shop, the demo or your own, is open at a time.`,
    );
  } catch (error) {
    const way = error.code === 'ENOSPC' ? 'Make room on the disk.' : 'Start as the user who owns it.';
    giveUp(`${join(root, '.data')} can't be written: ${error.message}\n${way}`);
  }
}

checkRoom();
lockOrSayWho();
process.on('exit', () => leaveLock(lock));
const began = performance.now();
if (!isInstalled()) process.stdout.write('Slipmark starts for the first time; this takes a minute or two.\n');
await installIfNeeded();

// tsx is named by address and told its tsconfig, so that this also works when started from another folder.
// The condition lets a script load what is meant for the server.
const child = spawn(
  process.execPath,
  [
    '--conditions=react-server',
    '--import',
    import.meta.resolve('tsx'),
    join(root, 'lib/cli/starting/main.ts'),
  ],
  {
    cwd: root,
    // By the channel it hears of our death, and we hear which processes it began.
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
    env: {
      ...process.env,
      TSX_TSCONFIG_PATH: join(root, 'tsconfig.json'),
      SLIPMARK_START: JSON.stringify({ ...options, root, lock, installing: performance.now() - began }),
    },
  },
);
forwardSignals(child);

/** Of each process that runs by itself: its number, and the signal on which it ends well. */
let running = [];
child.on('message', (told) => {
  running = told.running;
  if (told.address !== null) noteAddress(lock, told.address);
});
child.on('error', (error) => giveUp(`The starter could not be run: ${error.message}`));
child.on('exit', (code, signal) => {
  process.exitCode = exitCodeOf(code, signal);
  // It ended all of them by itself, unless it was killed.
  if (signal !== null)
    process.stderr.write(`\nThe starter was ended from outside (${signal}). What ran is stopped.\n`);
  for (const { pid, signal: ask } of running) {
    try {
      process.kill(pid, ask);
    } catch {
      // gone already
    }
  }
});
