/** A shop of its own for a file of browser tests: a copy of the demo's database, and a server on a free port. */
import { someFreePort } from '@/lib/cli/starting/free-port';
import { serve } from '@/lib/cli/starting/serve';
import { PAGES, ROOT } from './browser-global';
import { DEMO_TEMPLATE } from './demo-cluster';
import { freshDatabase } from './postgres';
import type { FreshDatabase } from './postgres';

const SHORT_LIVED = new URL('short-lived.mjs', import.meta.url).href;

export interface OpenedShop {
  /** Where it is: http://127.0.0.1:… */
  readonly address: string;
  readonly database: FreshDatabase;
  /** What the server has said since it opened; a healthy one has nothing to say. */
  readonly said: () => string;
  /** Serves the same shop once more, from a process of its own. */
  readonly serveAgain: () => Promise<Instance>;
  readonly close: () => Promise<void>;
}

/** One process that serves the shop; it may be stopped and come back at the same address. */
export interface Instance {
  readonly address: string;
  readonly start: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** Empty: the tables and nothing in them. */
export const openShop = async (holding: 'demo' | 'nothing' = 'demo'): Promise<OpenedShop> => {
  const database = await (holding === 'demo' ? freshDatabase(DEMO_TEMPLATE) : freshDatabase());
  const heard: string[] = [];
  const instances: Instance[] = [];
  const serveAgain = async (): Promise<Instance> => {
    const made = await instance(database.url, (text) => heard.push(text));
    instances.push(made);
    return made;
  };
  const close = async (): Promise<void> => {
    await Promise.all(instances.map((each) => each.stop()));
    await database.drop();
  };
  try {
    const { address } = await serveAgain();
    return { address, database, said: () => heard.join(''), serveAgain, close };
  } catch (error) {
    await close();
    throw error;
  }
};

const instance = async (url: string, hear: (text: string) => void): Promise<Instance> => {
  const port = await someFreePort();
  const launch = (): ReturnType<typeof serve> =>
    serve({
      root: ROOT,
      folder: PAGES,
      port,
      environment: {
        DATABASE_URL: url,
        NEXTAUTH_URL: `http://127.0.0.1:${String(port)}`,
        NEXTAUTH_SECRET: 'only for tests',
        NODE_OPTIONS: `--import=${SHORT_LIVED}`,
      },
      hear,
    });
  let server = launch();
  await server.open;
  return {
    address: server.address,
    start: async () => {
      server = launch();
      await server.open;
    },
    stop: () => server.stop(),
  };
};
