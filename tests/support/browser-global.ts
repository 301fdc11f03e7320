/** For the browser tests: the pages built once, a database with the demo shop to copy, a browser. */
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { preparePages } from '@/lib/cli/starting/prepare';
import { findChromium } from './chromium';
import { prepareDemo } from './demo-cluster';
import { startTestCluster } from './postgres-global';

/** Beside the folder that `npm start` serves from, which may be in use. */
export const PAGES = '.data/next-tests';
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

declare module 'vitest' {
  interface ProvidedContext {
    chromium: string;
  }
}

export default async (project: TestProject): Promise<() => Promise<void>> => {
  project.provide('chromium', findChromium());
  // Both take a core for a while.
  await Promise.all([preparePages(ROOT, PAGES), prepareDemo()]);
  const { url, stop } = await startTestCluster();
  project.provide('postgres', url);
  return stop;
};
