/** Runs a program of this project to its end; what it says is kept, and shown only if it fails. */
import { spawn } from 'node:child_process';
import { CalledOff, goOnUnlessStopping, isStopping, onCallOff } from './stopping';
import { asTrouble, StartTrouble } from './trouble';

export const runNode = async (
  root: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>>,
): Promise<void> => {
  goOnUnlessStopping();
  const child = spawn(process.execPath, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, ...environment },
  });
  const forget = onCallOff(() => {
    child.kill('SIGTERM');
  });
  const said: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (part: Buffer) => said.push(part));
  const status = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
  forget();
  if (isStopping()) throw new CalledOff();
  if (status === 0) return;
  const text = Buffer.concat(said).toString('utf8').trim().slice(-4000);
  throw asTrouble(new Error(text)) ?? new StartTrouble(text);
};
