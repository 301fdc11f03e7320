/** The demo shop, found at run time: nothing in lib depends on the seed, which may be left out where it is not wanted. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Database } from '@/lib/server/database';
import type { Filling } from './shop-database';

interface SignIn {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly string[];
  readonly password: string;
  readonly pin: string;
}

interface DemoSeed {
  readonly seedDemo: (db: Database, log: (line: string) => void) => Promise<void>;
}

const load = async <Module>(root: string, file: string): Promise<Module> =>
  (await import(pathToFileURL(join(root, 'seed', file)).href)) as Module;

export const demoFilling = (root: string): Filling => ({
  label: 'demo shop',
  fill: async (db) => {
    const { seedDemo } = await load<DemoSeed>(root, 'demo.ts');
    let last = '';
    await seedDemo(db, (line) => (last = line)).catch((error: unknown) => {
      if (last !== '') process.stderr.write(`\nThe last that was heard of it: ${last}\n`);
      throw error;
    });
  },
});

/** One line a person, for the terminal. */
export const demoSignIns = async (root: string): Promise<readonly string[]> => {
  const { DEMO_SIGN_INS } = await load<{ DEMO_SIGN_INS: readonly SignIn[] }>(root, 'demo-shop.ts');
  const rows = [
    ['sign in as', 'password', 'PIN', 'roles'],
    ...DEMO_SIGN_INS.map((one) => [one.name, one.password, one.pin, one.roles.join(', ')]),
  ];
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)) + 3);
  return rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join(''));
};
