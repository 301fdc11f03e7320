import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { alias: { '@/': fileURLToPath(new URL('./', import.meta.url)) } },
  test: {
    projects: [
      {
        extends: true,
        test: { name: 'domain', include: ['tests/domain/**/*.test.ts'] },
      },
      {
        extends: true,
        test: {
          name: 'properties',
          include: ['tests/properties/**/*.test.ts'],
          testTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'cli',
          include: ['tests/cli/**/*.test.ts', 'tests/seed/**/*.test.ts'],
          testTimeout: 60_000,
        },
      },
    ],
  },
});
