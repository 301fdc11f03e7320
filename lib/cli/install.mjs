// Plain Node with built-ins only: this runs before any package is there.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Inside node_modules, so that whoever deletes or replaces that folder also takes the stamp away. */
const stampFile = join(root, 'node_modules', '.slipmark-stamp');

/**
 * Installs the packages unless node_modules was installed from this very package-lock.json.
 * npm's output goes to stderr, because the stdout of a command may be piped into another program.
 */
export function installIfNeeded() {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return;

  process.stderr.write('Installing packages (npm ci) …\n');
  const started = performance.now();
  // --include=dev: with NODE_ENV=production npm would leave out the tools that the tests need.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  const run = npm
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync('npm', args, { ...options, shell: process.platform === 'win32' });
  if (run.status !== 0) {
    process.stderr.write(
      'The packages could not be installed; what npm said stands above. A package registry must be reachable once.\n',
    );
    process.exit(run.status ?? 1);
  }
  writeFileSync(stampFile, wanted);
  process.stderr.write(`Packages installed in ${((performance.now() - started) / 1000).toFixed(1)} s.\n`);
}
