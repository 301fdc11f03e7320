/** What the bootstrap is told, by the channel between us: whom it must end if we are killed, and where the shop is open. */

interface Running {
  readonly pid: number;
  /** On which it ends well. */
  readonly signal: NodeJS.Signals;
}

let address: string | null = null;
let running: readonly Running[] = [];

const tell = (): void => {
  if (process.connected) process.send?.({ address, running });
};

export const noteAddress = (said: string): void => {
  address = said;
  tell();
};

/** The server first, then the database, as we would end them ourselves. */
export const noteRunning = (server: number | null, database: number | null): void => {
  running = [
    ...(server === null ? [] : [{ pid: server, signal: 'SIGTERM' as const }]),
    ...(database === null ? [] : [{ pid: database, signal: 'SIGINT' as const }]),
  ];
  tell();
};
