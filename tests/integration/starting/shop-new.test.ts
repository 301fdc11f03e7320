/** `slipmark shop new`, as somebody types it, on a real database of theirs. */
import { execFile } from 'node:child_process';
import { afterAll, expect, test } from 'vitest';
import { openDatabase } from '@/lib/server/database';
import { enrollingOf } from '@/lib/server/auth/enrolment';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { freshDatabase } from '@/tests/support/postgres';

const database = await freshDatabase();
const db = openDatabase(database.url, 2);
afterAll(async () => {
  await db.$disconnect();
  await database.drop();
});

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly problems: string;
}

const shopNew = (...args: readonly string[]): Promise<Ended> =>
  new Promise((resolve) => {
    execFile(
      process.execPath,
      ['lib/cli/slipmark.mjs', 'shop', 'new', ...args],
      {
        env: { ...process.env, DATABASE_URL: database.url, MIGRATIONS_DATABASE_URL: database.ownerUrl },
        timeout: 60_000,
      },
      (error, out, problems) =>
        resolve({
          code: error === null ? 0 : typeof error.code === 'number' ? error.code : -1,
          out,
          problems,
        }),
    );
  });

const HALLAM = ['--name', 'Hallam Cars', '--owner', 'Nora Hallam', '--zone', 'Europe/London'] as const;

let given = '';
const tokenIn = (out: string): string => /[?&]token=(\S+)/.exec(out)?.[1] ?? '';

test('a zone that no calendar knows opens nothing', async () => {
  const { code, problems } = await shopNew(...HALLAM.slice(0, 4), '--zone', 'Europe/Nowhere');
  expect(code).toBe(2);
  expect(problems).toContain('Europe/Nowhere is no time zone');
  expect(await db.shopSetting.count()).toBe(0);
});

test('it opens a shop with its owner and nothing invented, and gives the link by which they come in', async () => {
  const { code, out, problems } = await shopNew(...HALLAM, '--address', 'http://bench.test:4000');
  expect([code, problems]).toEqual([0, '']);
  expect(out).toContain('Hallam Cars is open, on the calendar of Europe/London.');
  expect(out).toMatch(
    /^Nora Hallam sets a password with this link, once:\nhttp:\/\/bench\.test:4000\/set-up\/enrol/m,
  );
  expect(await shopSetting(db)).toMatchObject({ name: 'Hallam Cars', zone: 'Europe/London' });
  const { people, tools, plans } = await loadShop(db);
  expect(Object.values(people)).toMatchObject([
    { name: 'Nora Hallam', roles: ['owner', 'lead', 'technician'] },
  ]);
  expect([tools, plans, await db.car.count()]).toEqual([{}, {}, 0]);
  given = tokenIn(out);
  expect(await enrollingOf(db, given)).toMatchObject({ name: 'Nora Hallam' });
});

test('typed again it opens nothing anew, and the new link takes the place of the old one', async () => {
  const again = await shopNew(...HALLAM);
  expect(again.code).toBe(0);
  expect(await enrollingOf(db, given)).toBeNull();
  expect(await enrollingOf(db, tokenIn(again.out))).toMatchObject({ name: 'Nora Hallam' });
  expect(Object.keys((await loadShop(db)).people)).toHaveLength(1);
});

test('a database that holds another shop is left as it is, and that is said', async () => {
  const { code, problems } = await shopNew('--name', 'Other Cars', '--owner', 'Otto', '--zone', 'UTC');
  expect(code).toBe(1);
  expect(problems).toContain('this database holds the shop “Hallam Cars” already');
  expect(await shopSetting(db)).toMatchObject({ name: 'Hallam Cars', zone: 'Europe/London' });
  expect(Object.keys((await loadShop(db)).people)).toHaveLength(1);
});
