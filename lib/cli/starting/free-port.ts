/** Ports on loopback: whether one is free, and a free one. */
import { createServer } from 'node:net';

export const LOOPBACK = '127.0.0.1';

/**
 * Null: it can be had. Else the system's code for why not. Tried by listening, the only question that it answers truly.
 */
export const whyNot = (port: number): Promise<string | null> =>
  new Promise((resolve) => {
    const server = createServer();
    server.once('error', (error: NodeJS.ErrnoException) => {
      resolve(error.code ?? error.message);
    });
    server.listen(port, LOOPBACK, () => {
      server.close(() => {
        resolve(null);
      });
    });
  });

export const isFree = async (port: number): Promise<boolean> => (await whyNot(port)) === null;

/** The first free port from this one on. */
export const freePortFrom = async (first: number): Promise<number> => {
  for (let port = first; port < first + 500; port += 1) if (await isFree(port)) return port;
  throw new Error(`No port from ${String(first)} to ${String(first + 499)} is free.`);
};

/** Below the range from which systems take ports for outgoing connections, so that it is still free next time. */
export const someFreePort = (): Promise<number> => freePortFrom(20_000 + Math.floor(Math.random() * 12_000));
