/** What is made from the sources before anything is served: the database client and the built pages. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { hashOf } from './hash-of';
import { runNode } from './run';
import { makeUnlessStamped } from './stamp';

/** Nothing here may call out while it works. */
const QUIET = { NEXT_TELEMETRY_DISABLED: '1', CHECKPOINT_DISABLE: '1', PRISMA_HIDE_UPDATE_MESSAGE: '1' };

export const prepareClient = (root: string): Promise<'made' | 'unchanged'> => {
  const wanted = hashOf(root, ['prisma/schema', 'prisma.config.ts', 'package-lock.json']);
  // `generate` looks for an engine, which it would fetch from a host of its own, and then does not use it: any program
  // will do.
  const environment = { ...QUIET, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath };
  return makeUnlessStamped(
    join(root, 'node_modules/.slipmark-client'),
    wanted,
    () => runNode(root, ['node_modules/prisma/build/index.js', 'generate'], environment),
    existsSync(join(root, 'prisma/generated/client.ts')),
  );
};

/** Next's types of the routes, and `next-env.d.ts`, without which a style sheet is no module. */
export const prepareTypes = (root: string): Promise<void> =>
  runNode(root, ['node_modules/next/dist/bin/next', 'typegen'], QUIET);

const PAGES = [
  'app',
  'components',
  'lib',
  'prisma/schema',
  'proxy.ts',
  'next.config.ts',
  'postcss.config.mjs',
];

/** `folder` is relative to the root, as Next wants it. */
export const preparePages = (root: string, folder: string): Promise<'made' | 'unchanged'> => {
  const wanted = hashOf(root, [...PAGES, 'package-lock.json'], ['lib/cli']);
  // In the folder itself: whoever deletes it also takes the stamp away, and so does Next when it builds anew.
  return makeUnlessStamped(join(root, folder, 'slipmark-stamp'), wanted, () =>
    runNode(root, ['node_modules/next/dist/bin/next', 'build'], {
      ...QUIET,
      NODE_ENV: 'production',
      SLIPMARK_DIST: folder,
    }),
  );
};
