import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Only the bench project measures; without an empty list every project would find the bench files. */
const measuresNothing = { benchmark: { include: [] } };

export default defineConfig({
  resolve: { alias: { '@/': fileURLToPath(new URL('./', import.meta.url)) } },
  test: {
    projects: [
      {
        extends: true,
        test: { name: 'domain', include: ['tests/domain/**/*.test.ts'], ...measuresNothing },
      },
      {
        extends: true,
        test: {
          name: 'properties',
          include: ['tests/properties/**/*.test.ts'],
          testTimeout: 120_000,
          ...measuresNothing,
        },
      },
      {
        extends: true,
        test: {
          name: 'cli',
          include: ['tests/cli/**/*.test.ts', 'tests/seed/**/*.test.ts'],
          testTimeout: 60_000,
          ...measuresNothing,
        },
      },
      {
        extends: true,
        test: { name: 'bench', include: [], benchmark: { include: ['tests/bench/**/*.bench.ts'] } },
      },
    ],
  },
});
