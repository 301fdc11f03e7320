import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/**
 * The server's modules say `server-only`, which throws unless one asks as React's server side does: this is what that
 * side gets. By alias, because a condition would not reach the global set-ups.
 */
const asServer = {
  resolve: {
    alias: { 'server-only': fileURLToPath(new URL('./node_modules/server-only/empty.js', import.meta.url)) },
  },
};

export default defineConfig({
  resolve: { alias: { '@/': fileURLToPath(new URL('./', import.meta.url)) } },
  test: {
    // Nobody types beside a test run: all cores are its own.
    maxWorkers: '100%',
    // Files share what they import: loading the rulebook anew for each took as long as a third of the tests.
    isolate: false,
    projects: [
      {
        extends: true,
        test: {
          // One project, so that a worker loads the rulebook once for all of them.
          name: 'rules',
          include: ['domain', 'properties', 'offline', 'cli', 'seed'].map(
            (folder) => `tests/${folder}/**/*.test.ts`,
          ),
          testTimeout: 120_000,
        },
      },
      {
        extends: true,
        ...asServer,
        test: {
          name: 'integration',
          include: ['tests/integration/**/*.test.ts'],
          globalSetup: ['tests/support/postgres-global.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        ...asServer,
        test: {
          name: 'browser',
          include: ['tests/e2e/**/*.test.ts'],
          globalSetup: ['tests/support/browser-global.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // After all others: a browser and a server want the machine for themselves.
          sequence: { groupOrder: 1 },
          // A test waits for its browser, the browser for the server: four of them keep two cores at work.
          maxWorkers: 4,
        },
      },
    ],
  },
});
