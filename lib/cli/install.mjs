// Plain Node with built-ins only: this runs before any package is there.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Inside node_modules, so that whoever deletes or replaces that folder also takes the stamp away. */
const stampFile = join(root, 'node_modules', '.slipmark-stamp');

const wantedStamp = () =>
  createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');

export const isInstalled = () => existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wantedStamp();

/** Ends as a shell reports a death by signal: 128 + its number. */
export const exitCodeOf = (code, signal) => code ?? 128 + (signal ? constants.signals[signal] : 0);

/** Passes on what the terminal or the system asks of us, so that no child outlives a stop. Answers what was asked. */
export function forwardSignals(child) {
  let asked = null;
  const forward = (signal) => {
    asked = signal;
    child.kill(signal);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, forward);
  child.on('exit', () => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.off(signal, forward);
  });
  return () => asked;
}

/**
 * Installs the packages unless node_modules was installed from this very package-lock.json.
 * npm's output goes to stderr, because the stdout of a command may be piped into another program.
 */
export async function installIfNeeded() {
  if (isInstalled()) return;
  const wanted = wantedStamp();

  process.stderr.write('Installing packages (npm ci) …\n');
  const started = performance.now();
  // --include=dev: with NODE_ENV=production npm would leave out the tools that the tests and the build need.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  const child = npm
    ? spawn(process.execPath, [npm, ...args], options)
    : spawn('npm', args, { ...options, shell: process.platform === 'win32' });
  const asked = forwardSignals(child);
  const status = await new Promise((resolve) => {
    child.on('error', () => resolve(1));
    child.on('exit', (code, signal) => resolve(exitCodeOf(code, signal)));
  });
  // Stopped on purpose; without the stamp the next start installs again.
  if (asked() !== null) process.exit(exitCodeOf(null, asked()));
  if (status !== 0) {
    process.stderr.write(
      'The packages could not be installed; what npm said stands above. A package registry must be reachable once,\n' +
        'and the disk must have about 1.5 GB to spare.\n',
    );
    process.exit(status);
  }
  writeFileSync(stampFile, wanted);
  process.stderr.write(`Packages installed in ${((performance.now() - started) / 1000).toFixed(1)} s.\n`);
}
