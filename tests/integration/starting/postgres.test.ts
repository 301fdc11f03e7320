import { Client } from 'pg';
import { afterAll, expect, test } from 'vitest';
import { freshDatabase } from '@/tests/support/postgres';

const query = async (url: string, sql: string): Promise<unknown[]> => {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows as unknown[];
  } finally {
    await client.end();
  }
};

const database = await freshDatabase();
afterAll(() => database.drop());

test('a fresh database has every table, and Prisma’s own history of how it came to them', async () => {
  const history = await query(
    database.ownerUrl,
    'SELECT migration_name, finished_at FROM _prisma_migrations',
  );
  expect(history.length).toBeGreaterThan(0);
  expect(await query(database.url, 'SELECT * FROM car')).toEqual([]);
});

test('functions with semicolons within came through whole', async () => {
  const rows = await query(
    database.superUrl,
    'SELECT tgname FROM pg_trigger WHERE NOT tgisinternal ORDER BY tgname',
  );
  expect(rows.length).toBeGreaterThan(0);
});

test('the role that serves can’t make tables', async () => {
  await expect(query(database.url, 'CREATE TABLE mine (id int)')).rejects.toThrow(/permission denied/);
});
