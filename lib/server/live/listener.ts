/**
 * The one ear of this process: a connection of its own that hears every commit. It asks now and then where all streams
 * stand, which shows that the line still holds, and is the net for a notification that was never delivered.
 */
import 'server-only';
import pg from 'pg';
import { CHANNEL } from '@/lib/server/write/answer';

export interface Ears {
  /** A stream has this version. The same may be told more than once, and an older one later. */
  readonly heard: (stream: string, version: number) => void;
  /** Where all of them stand: asked when the line opens, and again and again. */
  readonly stand: (versions: ReadonlyMap<string, number>) => void;
  readonly lost: () => void;
}

export interface Listener {
  readonly stop: () => Promise<void>;
}

/** In `pg_stat_activity`. */
export const LISTENER_NAME = 'slipmark live';
const ASK_EVERY_MS = 5000;
const PATIENCE_MS = 5000;
const LONGEST_MS = 5000;

export const listenTo = (url: string, ears: Ears, askEvery = ASK_EVERY_MS): Listener => {
  let isStopped = false;
  const goesOn = (): boolean => !isStopped;
  let end: () => void = () => undefined;

  const hearUntilLost = async (): Promise<void> => {
    const client = new pg.Client({
      connectionString: url,
      application_name: LISTENER_NAME,
      connectionTimeoutMillis: PATIENCE_MS,
      query_timeout: PATIENCE_MS,
      keepAlive: true,
    });
    const lost = new Promise<void>((resolve) => {
      end = resolve;
      // Every one of them: an error that nobody hears would end the process.
      client.on('error', () => {
        resolve();
      });
      client.once('end', () => {
        resolve();
      });
    });
    try {
      await client.connect();
      client.on('notification', ({ payload }) => {
        const told = toldIn(payload);
        if (told !== null) ears.heard(told.stream, told.version);
      });
      // Heard first and asked then: nothing can be committed in between unheard.
      await client.query(`LISTEN ${CHANNEL}`);
      for (
        let isOpen = true;
        isOpen && goesOn();
        isOpen = await Promise.race([lost.then(() => false), pause(askEvery)])
      ) {
        const { rows } = await client.query<{ id: string; version: number }>(
          'SELECT id, version FROM stream',
        );
        ears.stand(new Map(rows.map(({ id, version }) => [id, version])));
      }
    } finally {
      ears.lost();
      await Promise.race([client.end().catch(() => undefined), pause(1000)]);
    }
  };

  const run = async (): Promise<void> => {
    for (let failures = 0; goesOn();) {
      const began = performance.now();
      try {
        await hearUntilLost();
      } catch (error) {
        // Said once for each time that the database goes, not at every try.
        if (failures === 0) complain(error);
      }
      failures = performance.now() - began > LONGEST_MS ? 0 : failures + 1;
      if (goesOn()) await Promise.race([pause(Math.min(LONGEST_MS, 50 * 2 ** failures)), stopped]);
    }
  };

  let haveStopped: () => void = () => undefined;
  const stopped = new Promise<void>((resolve) => {
    haveStopped = resolve;
  });
  const running = run();
  return {
    stop: async () => {
      isStopped = true;
      haveStopped();
      end();
      await running;
    },
  };
};

const pause = (milliseconds: number): Promise<true> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds, true).unref();
  });

const complain = (error: unknown): void => {
  console.error(
    JSON.stringify({
      at: 'live line to the database',
      trouble: error instanceof Error ? error.message : 'unknown',
    }),
  );
};

/** Anybody who may connect may also notify: what is not ours is left alone. */
const toldIn = (
  payload: string | undefined,
): { readonly stream: string; readonly version: number } | null => {
  try {
    const told: unknown = JSON.parse(payload ?? '');
    return typeof told === 'object' &&
      told !== null &&
      'stream' in told &&
      'version' in told &&
      typeof told.stream === 'string' &&
      Number.isSafeInteger(told.version)
      ? { stream: told.stream, version: Number(told.version) }
      : null;
  } catch {
    return null;
  }
};
