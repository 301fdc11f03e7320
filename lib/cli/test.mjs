// `npm test`: every check there is, each of them even if one before it failed, so that one run shows all.
// Plain Node with built-ins only: this runs before any package is there.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installIfNeeded, root } from './install.mjs';

await installIfNeeded();

const scratch = mkdtempSync(join(tmpdir(), 'slipmark-test-'));
const modules = join(root, 'node_modules');
const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const tsx = ['--import', pathToFileURL(join(modules, 'tsx/dist/loader.mjs')).href];
const reports = [];

const vitest = (project, name) => {
  const report = join(scratch, `${name}.json`);
  reports.push(report);
  const output = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return [join(modules, 'vitest/vitest.mjs'), 'run', '--project', project, ...output];
};

/** A tool as the scripts of package.json call it, without a shell between. */
const script = (name) => {
  const [tool, ...given] = scripts[name].split(' ');
  return [join(modules, tool, 'bin', tool), ...given];
};

/** One after the other; in each, the lanes run side by side, one core each. A test run takes all cores there are. */
const stages = [
  [[['client and types', [...tsx, join(root, 'lib/cli/starting/prepare-checks.ts')]]]],
  [
    [
      // Both in one program; Next's types of the pages lie in a folder that is else looked over.
      ['types', script('typecheck')],
      ['lint', [join(modules, 'eslint/bin/eslint.js'), '.', '--max-warnings', '0']],
      ['demo', ['--conditions=react-server', ...tsx, join(root, 'tests/support/build-demo.ts')]],
    ],
    [
      ['pages', [...tsx, join(root, 'tests/support/build-pages.ts')]],
      ['unused code and circles', [join(modules, 'knip/bin/knip.js')]],
      ['format', [...script('format'), '--check']],
    ],
  ],
  [[['tests', vitest('!browser', 'tests')]]],
  // By themselves: a browser and a server want the machine.
  [[['browser tests', vitest('browser', 'browser')]]],
];

const environment = {
  ...process.env,
  TSX_TSCONFIG_PATH: join(root, 'tsconfig.json'),
  NEXT_TELEMETRY_DISABLED: '1',
};

const failed = [];
for (const lanes of stages) await Promise.all(lanes.map((steps) => inTurn(steps, lanes.length > 1)));

const counts = reports.map(countTests);
rmSync(scratch, { recursive: true, force: true });
const sum = (key) => counts.reduce((total, count) => total + count[key], 0);
if (failed.length > 0) process.stdout.write(`Failed: ${failed.join(', ')}\n`);
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

/** Steps that share the screen with others say what they have to say in one piece, at their end. */
async function inTurn(steps, isBeside) {
  for (const [name, args] of steps) {
    process.stdout.write(`[${name}] …\n`);
    const started = performance.now();
    const { status, said } = await run(args, isBeside);
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    process.stdout.write(`${said}[${name}]: ${status === 0 ? 'ok' : 'FAILED'}, ${seconds} s\n\n`);
    if (status !== 0) failed.push(name);
  }
}

function run(args, isHeard) {
  const output = isHeard ? 'pipe' : 'inherit';
  const child = spawn(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', output, output],
    env: environment,
  });
  const pieces = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (piece) => pieces.push(piece));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, said: Buffer.concat(pieces).toString('utf8') }));
  });
}
