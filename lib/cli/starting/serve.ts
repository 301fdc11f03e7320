/** The built pages, served on loopback by a process of their own. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { LOOPBACK } from './free-port';
import { endProcess, pause } from './processes';

export interface Serving {
  readonly root: string;
  /** Where the built pages are, relative to the root. */
  readonly folder: string;
  readonly port: number;
  readonly environment: Readonly<Record<string, string>>;
  /** What the server says once it is open. */
  readonly hear: (text: string) => void;
}

export interface Server {
  readonly pid: number | null;
  readonly address: string;
  /** Resolves once it answers; rejects, with what it said, if it ends before that. */
  readonly open: Promise<void>;
  readonly isRunning: () => boolean;
  readonly stop: () => Promise<void>;
}

/** For a server that answers, but not yet as it should. */
const PATIENCE = 10_000;

const WITH_STARTER = fileURLToPath(new URL('with-starter.mjs', import.meta.url));

/** Next itself, not a wrapper: a signal must reach the process that serves. Detached, as the database is. */
const launch = ({ root, folder, port, environment }: Serving): ChildProcess =>
  spawn(
    process.execPath,
    [
      '--import',
      WITH_STARTER,
      'node_modules/next/dist/bin/next',
      'start',
      ...['--port', String(port), '--hostname', LOOPBACK],
    ],
    {
      cwd: root,
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      env: {
        ...process.env,
        NODE_ENV: 'production',
        NEXT_TELEMETRY_DISABLED: '1',
        SLIPMARK_DIST: folder,
        ...environment,
      },
    },
  );

/** Answers at once, so that a start that is called off in this very moment knows whom to end. */
export const serve = (serving: Serving): Server => {
  const child = launch(serving);
  const address = `http://${LOOPBACK}:${String(serving.port)}`;
  let isOpen = false;
  let early = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (part: Buffer) => {
      const text = part.toString('utf8');
      if (isOpen) serving.hear(text);
      else early += text;
    });
  let isRunning = true;
  for (const event of ['error', 'close'])
    child.once(event, () => {
      isRunning = false;
    });
  const untilOpen = async (): Promise<void> => {
    const said = (): string => early.trim().slice(-2000);
    const patience = performance.now() + PATIENCE;
    for (let status = await ask(address); status === null || status >= 500; status = await ask(address)) {
      if (!isRunning) throw new Error(`The server did not start. It says:\n${said()}`);
      if (status !== null && performance.now() > patience)
        throw new Error(
          `The server answers with nothing but errors (${String(status)}). It says:\n${said()}`,
        );
      await pause(40);
    }
    isOpen = true;
  };
  const pid = child.pid ?? null;
  // Whoever is being answered gets five seconds more.
  const stop = (): Promise<void> =>
    isRunning && pid !== null ? endProcess(pid, 'SIGTERM', 5000, 'SIGKILL') : Promise.resolve();
  return { pid, address, open: untilOpen(), isRunning: () => isRunning, stop };
};

/** The page is one that everybody may ask for, and the first that people see. Null: nobody answers yet. */
const ask = async (address: string): Promise<number | null> => {
  try {
    const signal = AbortSignal.timeout(10_000);
    return (await fetch(`${address}/sign-in`, { redirect: 'manual', signal })).status;
  } catch {
    return null;
  }
};
