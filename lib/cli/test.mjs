// `npm test`: every check there is, each of them even if one before it failed, so that one run shows all.
// Plain Node with built-ins only: this runs before any package is there.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installIfNeeded, root } from './install.mjs';

await installIfNeeded();

const scratch = mkdtempSync(join(tmpdir(), 'slipmark-test-'));
const modules = join(root, 'node_modules');
const tsx = ['--import', pathToFileURL(join(modules, 'tsx/dist/loader.mjs')).href];
const reports = [];

const vitest = (project, name) => {
  const report = join(scratch, `${name}.json`);
  reports.push(report);
  const output = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return [join(modules, 'vitest/vitest.mjs'), 'run', '--project', project, ...output];
};

const steps = [
  ['client and types', [...tsx, join(root, 'lib/cli/starting/prepare-checks.ts')]],
  ['lint', [join(modules, 'eslint/bin/eslint.js'), '.', '--max-warnings', '0']],
  ['typecheck', [join(modules, 'typescript/bin/tsc'), '--noEmit']],
  ['format', [join(modules, 'prettier/bin/prettier.cjs'), '--check', '.', '--log-level', 'warn']],
  ['unused code', [join(modules, 'knip/bin/knip.js')]],
  ['tests', vitest('!browser', 'tests')],
  // By themselves: a browser and a server want the machine.
  ['browser tests', vitest('browser', 'browser')],
];

const environment = {
  ...process.env,
  TSX_TSCONFIG_PATH: join(root, 'tsconfig.json'),
  NEXT_TELEMETRY_DISABLED: '1',
};

const failed = steps.filter(([name, args], index) => {
  const label = `[${index + 1}/${steps.length}] ${name}`;
  process.stdout.write(`${label} …\n`);
  const started = performance.now();
  const { status } = spawnSync(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: environment,
  });
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  process.stdout.write(`${label}: ${status === 0 ? 'ok' : 'FAILED'}, ${seconds} s\n\n`);
  return status !== 0;
});

const counts = reports.map(countTests);
rmSync(scratch, { recursive: true, force: true });
const sum = (key) => counts.reduce((total, count) => total + count[key], 0);
if (failed.length > 0) process.stdout.write(`Failed: ${failed.map(([name]) => name).join(', ')}\n`);
process.stdout.write(
  `All of it took ${(performance.now() / 60_000).toFixed(1)} minutes.\n${sum('passed')} passed, ${sum('failed')} failed\n`,
);
process.exitCode = failed.length > 0 ? 1 : 0;

/** A test file that could not even be loaded holds no test; it counts as one that failed. */
function countTests(report) {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
    const unloadable = testResults.filter(
      (file) => file.status === 'failed' && file.assertionResults.length === 0,
    );
    return { passed: numPassedTests, failed: numFailedTests + unloadable.length };
  } catch {
    return { passed: 0, failed: 1 }; // no report: Vitest itself did not get through
  }
}
