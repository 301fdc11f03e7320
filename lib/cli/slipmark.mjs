// The door to the command line: sees to the packages, then hands over to TypeScript.
import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { join } from 'node:path';
import { installIfNeeded, root } from './install.mjs';

await installIfNeeded();

// tsx is named by address and told its tsconfig, so that this also works when started from another folder.
const tsx = import.meta.resolve('tsx');
const child = spawn(
  process.execPath,
  ['--conditions=react-server', '--import', tsx, join(root, 'lib/cli/main.ts'), ...process.argv.slice(2)],
  { stdio: 'inherit', env: { ...process.env, TSX_TSCONFIG_PATH: join(root, 'tsconfig.json') } },
);

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
child.on('error', (error) => {
  process.stderr.write(`The command line could not be started: ${error.message}\n`);
  process.exitCode = 1;
});
// A shell reports a death by signal as 128 + its number; so do we.
child.on('exit', (code, signal) => {
  process.exitCode = code ?? 128 + (signal ? constants.signals[signal] : 0);
});
