/** For the browser tests: the pages built once, a database with the demo shop to copy, a browser. */
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { preparePages } from '@/lib/cli/starting/prepare';
import { makeDatabase, urlAs } from '@/lib/cli/starting/roles';
import { findChromium } from './chromium';
import { PASSWORDS, startTestCluster, TEMPLATE } from './postgres-global';

/** Beside the folder that `npm start` serves from, which may be in use. */
export const PAGES = '.data/next-tests';
export const DEMO_TEMPLATE = 'slipmark_demo_template';
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

declare module 'vitest' {
  interface ProvidedContext {
    chromium: string;
  }
}

export default async (project: TestProject): Promise<() => Promise<void>> => {
  project.provide('chromium', findChromium());
  const { url, stop } = await startTestCluster();
  try {
    project.provide('postgres', url);
    // Both take a core for a while.
    await Promise.all([preparePages(ROOT, PAGES), makeDemo(url)]);
    return stop;
  } catch (error) {
    await stop();
    throw error;
  }
};

const makeDemo = async (url: string): Promise<void> => {
  await makeDatabase(url, DEMO_TEMPLATE, TEMPLATE);
  // Loaded only now, like everything that rests on the client, which a fresh clone has to make first.
  const [{ openDatabase }, { seedDemo }] = await Promise.all([
    import('@/lib/server/database'),
    import('@/seed/demo'),
  ]);
  const db = openDatabase(urlAs(url, 'app', PASSWORDS, DEMO_TEMPLATE), 4);
  await seedDemo(db, () => undefined);
  await db.$disconnect();
};
