/** A shop of its own for a file of browser tests: a copy of the demo's database, and a server on a free port. */
import { someFreePort } from '@/lib/cli/starting/free-port';
import { serve } from '@/lib/cli/starting/serve';
import { DEMO_TEMPLATE, PAGES, ROOT } from './browser-global';
import { freshDatabase } from './postgres';
import type { FreshDatabase } from './postgres';

export interface OpenedShop {
  /** Where it is: http://127.0.0.1:… */
  readonly address: string;
  readonly database: FreshDatabase;
  /** What the server has said since it opened; a healthy one has nothing to say. */
  readonly said: () => string;
  readonly close: () => Promise<void>;
}

/** Empty: the tables and nothing in them. */
export const openShop = async (holding: 'demo' | 'nothing' = 'demo'): Promise<OpenedShop> => {
  const database = await (holding === 'demo' ? freshDatabase(DEMO_TEMPLATE) : freshDatabase());
  const port = await someFreePort();
  const heard: string[] = [];
  const server = serve({
    root: ROOT,
    folder: PAGES,
    port,
    environment: {
      DATABASE_URL: database.url,
      NEXTAUTH_URL: `http://127.0.0.1:${String(port)}`,
      NEXTAUTH_SECRET: 'only for tests',
    },
    hear: (text) => heard.push(text),
  });
  try {
    await server.open;
  } catch (error) {
    await database.drop();
    throw error;
  }
  return {
    address: server.address,
    database,
    said: () => heard.join(''),
    close: async () => {
      await server.stop();
      await database.drop();
    },
  };
};
