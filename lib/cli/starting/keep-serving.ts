/** Serves the shop, and starts again what ends by itself, but not for ever. */
import type { OpenShop } from './any-shop';
import { noteAddress, noteRunning } from './bootstrap';
import type { HandedOver } from './handed-over';
import { LOOPBACK } from './free-port';
import { pause } from './processes';
import { step } from './progress';
import { serve } from './serve';
import type { Server } from './serve';
import { isStopping, onStop } from './stopping';
import { StartTrouble } from './trouble';

const LOOK_EVERY = 500;
const TRIES = 3;
const WITHIN = 60_000;

/** Three times in a minute: what then still ends by itself has a fault that starting again does not cure. */
const tryAgain = (restarts: number[], what: string): void => {
  const now = performance.now();
  while (restarts[0] !== undefined && now - restarts[0] > WITHIN) restarts.shift();
  if (restarts.length === TRIES)
    throw new StartTrouble(`${what} ended by itself again and again. What it said stands above.`);
  restarts.push(now);
  process.stdout.write(`${what} ended by itself; it is started again.\n`);
};

const fromEnvironment = (name: string): string | null => process.env[name] || null;

export interface Serving {
  readonly address: string;
  /** Runs until the shop is stopped; rejects if it can't be kept open. */
  readonly watch: () => Promise<void>;
}

export const keepServing = async (given: HandedOver, folder: string, shop: OpenShop): Promise<Serving> => {
  const here = `http://${LOOPBACK}:${String(given.port)}`;
  const address = fromEnvironment('NEXTAUTH_URL') ?? here;
  const launch = (): Server =>
    serve({
      root: given.root,
      folder,
      port: given.port,
      environment: {
        DATABASE_URL: shop.url,
        // The right to make tables is not the server's.
        MIGRATIONS_DATABASE_URL: '',
        NEXTAUTH_URL: address,
        NEXTAUTH_SECRET: fromEnvironment('NEXTAUTH_SECRET') ?? shop.cluster?.secrets.session ?? '',
      },
      hear: (text) => process.stdout.write(text),
    });
  const note = (): void => {
    noteRunning(server.pid, shop.cluster?.pid() ?? null);
  };

  let server = launch();
  onStop(() => server.stop());
  note();
  await step('server', () => server.open);
  noteAddress(address);

  const restarts: number[] = [];
  const watch = async (): Promise<void> => {
    while (!isStopping()) {
      if (shop.cluster?.pid() === null) {
        tryAgain(restarts, 'The database');
        await shop.cluster.restart();
        note();
      }
      if (!server.isRunning()) {
        tryAgain(restarts, 'The server');
        server = launch();
        note();
        await server.open.catch((error: unknown) => {
          process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
        });
      }
      await pause(LOOK_EVERY);
    }
  };
  return { address, watch };
};
