// `npm test`: every check there is, each of them even if one before it failed, so that one run shows all.
// Plain Node with built-ins only: this runs before any package is there.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installIfNeeded, root } from './install.mjs';

installIfNeeded();

const scratch = mkdtempSync(join(tmpdir(), 'slipmark-test-'));
const report = join(scratch, 'report.json');

const steps = [
  ['lint', 'eslint/bin/eslint.js', ['.', '--max-warnings', '0']],
  ['typecheck', 'typescript/bin/tsc', ['--noEmit']],
  ['format', 'prettier/bin/prettier.cjs', ['--check', '.', '--log-level', 'warn']],
  ['unused code', 'knip/bin/knip.js', []],
  [
    'tests',
    'vitest/vitest.mjs',
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
  ],
];

const failed = steps.filter(([name, program, args], index) => {
  const label = `[${index + 1}/${steps.length}] ${name}`;
  process.stdout.write(`${label} …\n`);
  const started = performance.now();
  const { status } = spawnSync(process.execPath, [join(root, 'node_modules', program), ...args], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  process.stdout.write(`${label}: ${status === 0 ? 'ok' : 'FAILED'}, ${seconds} s\n\n`);
  return status !== 0;
});

const counts = countTests();
rmSync(scratch, { recursive: true, force: true });
if (failed.length > 0) process.stdout.write(`Failed: ${failed.map(([name]) => name).join(', ')}\n`);
process.stdout.write(`${counts.passed} passed, ${counts.failed} failed\n`);
process.exitCode = failed.length > 0 ? 1 : 0;

/** A test file that could not even be loaded holds no test; it counts as one that failed. */
function countTests() {
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
