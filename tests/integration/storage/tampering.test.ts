/**
 * What `log verify` finds (D49; reliability T21, section 2): somebody with the database's own password edits, deletes,
 * swaps and cuts behind the triggers' back. Each case is undone before the next.
 */
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { verifyLog } from '@/lib/server/log/verify';
import type { Fault } from '@/lib/server/log/verify';
import { openDatabase } from '@/lib/server/database';
import type { Database } from '@/lib/server/database';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
let root: pg.Client;
let reader: Database;

beforeAll(async () => {
  shop = await StoredShop.open();
  await shop.carAtOpenGate('C1');
  await shop.carAtOpenGate('C2');
  await shop.must('tom', { type: 'suspect-tool', tool: 'T-02', reason: 'dropped' });
  await shop.must('tom', { type: 'open-joint', car: 'C2', joint: 'J-1' });
  root = new pg.Client({ connectionString: shop.at.superUrl });
  await root.connect();
  await root.query('SET session_replication_role = replica');
  // Copies to put everything back from.
  for (const table of TABLES) await root.query(`CREATE TABLE kept_${table} AS TABLE ${table}`);
  reader = openDatabase(shop.at.url, 2);
});
afterAll(async () => {
  await reader.$disconnect();
  await root.end();
  await shop.close();
});

const TABLES = ['event', 'stream', 'car_joint', 'car_signature', 'tool', 'tool_suspect', 'person'];
const columnsOf = async (table: string): Promise<string> => {
  const { rows } = await root.query<{ name: string }>(
    `SELECT quote_ident(column_name) AS name FROM information_schema.columns
     WHERE table_name = $1 AND table_schema = 'public' AND is_generated = 'NEVER' ORDER BY ordinal_position`,
    [table],
  );
  return rows.map(({ name }) => name).join(', ');
};
afterEach(async () => {
  for (const table of TABLES) {
    const columns = await columnsOf(table);
    await root.query(`DELETE FROM ${table}`);
    await root.query(
      `INSERT INTO ${table} (${columns}) OVERRIDING SYSTEM VALUE SELECT ${columns} FROM kept_${table}`,
    );
  }
});

const faults = async (sql: string): Promise<readonly Fault[]> => {
  await root.query(sql);
  return (await verifyLog(reader)).faults;
};

test('an honest log has no fault, and every entry was looked at', async () => {
  const entries = await shop.db.event.count();
  expect(await verifyLog(reader)).toEqual({ streams: 3, entries, faults: [] });
});

describe('the log', () => {
  test('an edited entry', async () => {
    const found = await faults(
      `UPDATE event SET body = replace(body, '"tom"', '"tess"') WHERE stream = 'car:C1' AND version = 3`,
    );
    expect(found[0]).toMatchObject({ stream: 'car:C1', version: 3 });
    expect(found[0]?.says).toMatch(/text was changed/);
  });

  test('an edited entry with a hash that fits it: the next one no longer follows', async () => {
    const found = await faults(
      `UPDATE event SET body = replace(body, '"tom"', '"tess"'),
         hash = encode(sha256('\\x01'::bytea || decode(previous, 'hex') || convert_to(replace(body, '"tom"', '"tess"'), 'utf8')), 'hex')
       WHERE stream = 'car:C1' AND version = 3`,
    );
    expect(found[0]).toMatchObject({ stream: 'car:C1', version: 4 });
    expect(found[0]?.says).toMatch(/does not follow/);
  });

  test('a deleted entry', async () => {
    const found = await faults(`DELETE FROM event WHERE stream = 'car:C1' AND version = 4`);
    expect(found[0]).toMatchObject({ stream: 'car:C1', version: 5 });
    expect(found[0]?.says).toMatch(/entry 4 is missing/);
  });

  test('a cut tail', async () => {
    const found = await faults(
      `DELETE FROM event WHERE stream = 'car:C2' AND version = (SELECT max(version) FROM event WHERE stream = 'car:C2')`,
    );
    expect(found.map(({ says }) => says).join()).toMatch(/cut off/);
  });

  test('a swapped pair', async () => {
    const found = await faults(
      `UPDATE event SET version = CASE version WHEN 3 THEN 1004 ELSE 1003 END WHERE stream = 'car:C1' AND version IN (3, 4);
       UPDATE event SET version = version - 1000 WHERE stream = 'car:C1' AND version > 1000`,
    );
    expect(found[0]).toMatchObject({ stream: 'car:C1', version: 3 });
  });

  test('an entry put on at the end', async () => {
    const found = await faults(
      `INSERT INTO event (stream, version, type, command, at, body, previous, hash)
       SELECT stream, version + 1, type, command, at, body, hash, repeat('a', 64) FROM event
       WHERE stream = 'car:C1' ORDER BY version DESC LIMIT 1`,
    );
    expect(found[0]?.stream).toBe('car:C1');
  });

  test('an entry moved to another car', async () => {
    const found = await faults(
      `UPDATE event SET stream = 'car:C1', version = 99 WHERE stream = 'car:C2' AND type = 'joint-opened'`,
    );
    expect(new Set(found.map(({ stream }) => stream))).toEqual(new Set(['car:C1', 'car:C2']));
  });

  test('columns that say something else than the text', async () => {
    const found = await faults(
      `UPDATE event SET type = 'note-added' WHERE stream = 'car:C2' AND type = 'joint-opened'`,
    );
    expect(found[0]?.says).toMatch(/columns/);
  });

  test('a head that was set back', async () => {
    const found = await faults(
      `UPDATE stream SET version = version - 1, head = (SELECT previous FROM event WHERE stream = 'shop' ORDER BY version DESC LIMIT 1) WHERE id = 'shop'`,
    );
    expect(found[0]).toMatchObject({ stream: 'shop' });
  });
});

describe('the rows', () => {
  test.each([
    [
      'an edited joint',
      `UPDATE car_joint SET row = jsonb_set(row, '{level}', '"final"') WHERE car = 'C2'`,
      'car:C2',
    ],
    ['a signature gone', `DELETE FROM car_signature WHERE car = 'C1' AND act = 'final-joint'`, 'car:C1'],
    [
      'a signature nobody gave',
      `INSERT INTO car_signature (car, key, row) SELECT 'C2', 'forged', row FROM car_signature WHERE car = 'C1' AND act = 'final-joint'`,
      'car:C2',
    ],
    ['a suspicion that went away', `DELETE FROM tool_suspect`, 'shop'],
    ['a tool used less often', `UPDATE tool SET row = jsonb_set(row, '{cycles,used}', '0')`, 'shop'],
    [
      'a role that nobody gave',
      `UPDATE person SET row = jsonb_set(row, '{roles}', '["owner"]') WHERE id = 'tom'`,
      'shop',
    ],
  ])('%s', async (_, sql, stream) => {
    const found = await faults(sql);
    expect(found.map((fault) => [fault.stream, fault.version])).toEqual([[stream, null]]);
  });
});
