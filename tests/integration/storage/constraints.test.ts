/** The net under the rules: what raw SQL must not be able to do, as the app and as the owner of the tables. */
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { StoredShop } from '@/tests/support/stored-shop';

let shop: StoredShop;
let app: pg.Client;
let owner: pg.Client;
let root: pg.Client;

beforeAll(async () => {
  shop = await StoredShop.open();
  await shop.carAtOpenGate('C1');
  await shop.startCar('C2');
  await shop.must('tom', {
    type: 'report-finding',
    car: 'C1',
    about: { kind: 'joint', key: 'J-1' },
    text: 'paint under the washer',
  });
  [app, owner, root] = [shop.at.url, shop.at.ownerUrl, shop.at.superUrl].map(
    (connectionString) => new pg.Client({ connectionString }),
  ) as [pg.Client, pg.Client, pg.Client];
  for (const client of [app, owner, root]) await client.connect();
});
afterAll(async () => {
  for (const client of [app, owner, root]) await client.end();
  await shop.close();
});

/** The SQLSTATE that it ends with, `00000` where it went through; nothing of it stays. */
const stateOf = async (client: pg.Client, sql: string): Promise<string> => {
  await client.query('BEGIN');
  try {
    await client.query(sql);
    await client.query('SET CONSTRAINTS ALL IMMEDIATE');
    return '00000';
  } catch (error) {
    return (error as pg.DatabaseError).code ?? String(error);
  } finally {
    await client.query('ROLLBACK');
  }
};

const DENIED = '42501';
const CHECK = '23514';
const FOREIGN = '23503';
const UNIQUE = '23505';
const NOT_NULL = '23502';
const GENERATED = '428C9';

describe('the log takes entries and gives none back', () => {
  test.each([
    ['change an entry', `UPDATE event SET body = '{}' WHERE version = 1`],
    ['delete an entry', `DELETE FROM event WHERE version = 1`],
    ['empty it', `TRUNCATE event`],
    [
      'write over one',
      `INSERT INTO event (stream, version, type, command, at, body, previous, hash)
       SELECT stream, version, type, command, at, '{}', previous, hash FROM event LIMIT 1
       ON CONFLICT (stream, version) DO UPDATE SET body = '{}'`,
    ],
    ['switch its trigger off', `ALTER TABLE event DISABLE TRIGGER event_no_change`],
    ['say it is a replica', `SET session_replication_role = replica`],
    ['drop it', `DROP TABLE event CASCADE`],
    ['delete a command', `DELETE FROM command`],
    ['change what was asked', `UPDATE command SET body_hash = repeat('0', 64)`],
    ['delete a stream', `DELETE FROM stream`],
    ['delete a person', `DELETE FROM person`],
    ['delete a car', `DELETE FROM car`],
    ['change a plan', `UPDATE plan_revision SET document = '{}'`],
    ['read another’s roles away', `GRANT ALL ON event TO slipmark_app`],
  ])('the app can’t %s', async (_, sql) => {
    const state = await stateOf(app, sql);
    // A grant by somebody who may not is a warning in SQL and gives nothing.
    expect(sql.startsWith('GRANT') ? await stateOf(app, `${sql}; DELETE FROM event`) : state).toBe(DENIED);
  });

  test.each([
    ['change an entry', `UPDATE event SET body = '{}' WHERE version = 1`],
    ['delete an entry', `DELETE FROM event WHERE version = 1`],
    ['empty it', `TRUNCATE event CASCADE`],
    ['give a command another answer', `UPDATE command SET answer = '{}'`],
  ])('not even the owner of the tables or a superuser can %s', async (_, sql) => {
    expect(await stateOf(owner, sql)).toBe(DENIED);
    expect(await stateOf(root, sql)).toBe(DENIED);
  });

  test('an entry can’t stand in another’s place, or without its stream or its command', async () => {
    const insert = (stream: string, version: string, command: string): string =>
      `INSERT INTO event (stream, version, type, command, at, body, previous, hash)
       SELECT ${stream}, ${version}, type, ${command}, at, body, repeat('a', 64), hash FROM event WHERE stream = 'car:C1' AND version = 1`;
    expect(await stateOf(app, insert('stream', '1 + 1', 'command'))).toBe(UNIQUE);
    expect(await stateOf(app, insert(`'car:none'`, '2', 'command'))).toBe(FOREIGN);
    expect(await stateOf(app, insert('stream', '9999', `'none'`))).toBe(FOREIGN);
    expect(await stateOf(app, insert('stream', '0', 'command'))).toBe(CHECK);
  });
});

const set = (table: string, path: string, value: string, where = 'true'): string =>
  `UPDATE ${table} SET row = jsonb_set(row, '{${path}}', '${value}') WHERE ${where}`;
const without = (table: string, field: string): string => `UPDATE ${table} SET row = row - '${field}'`;
const add = (table: string, car: string, key: string, row: object): string =>
  `INSERT INTO ${table} (car, key, row) VALUES ('${car}', '${key}', '${JSON.stringify(row)}')`;

const signature = (act: string, subject: string): object => ({
  act,
  subject,
  number: 1,
  by: 'tom',
  at: '2026-03-02T08:00:00.000Z',
  struck: null,
});

describe('rows keep to what can be', () => {
  test.each<[string, string, string]>([
    ['a car in no stage', set('car', 'stage', '-1'), CHECK],
    ['a car of no version', set('car', 'version', '0'), CHECK],
    ['a car with another name inside', set('car', 'id', '"C9"'), CHECK],
    ['a car without a chassis number', set('car', 'chassis', '""'), CHECK],
    ['a car on a plan that is not kept', set('car', 'plan', `"${'e'.repeat(64)}"`), FOREIGN],
    ['a car without a plan', without('car', 'plan'), NOT_NULL],
    ['a joint of no level', set('car_joint', 'level', '"tight"'), CHECK],
    ['a joint in cycle 0', set('car_joint', 'cycle', '0'), CHECK],
    ['a joint torqued with a tool that is not there', set('car_joint', 'tool', '"T-99"'), FOREIGN],
    ['a joint without a level', without('car_joint', 'level'), NOT_NULL],
    ['an operation in run 0', set('car_operation', 'run', '0'), CHECK],
    ['an operation of no state', set('car_operation', 'status', '"done"'), CHECK],
    ['a check of no state', set('car_check', 'status', '"ok"'), CHECK],
    ['a check with a finding that is not there', set('car_check', 'finding', '"F-none"'), FOREIGN],
    ['more stopgaps out than in', set('car_stopgap', 'removed', '2'), CHECK],
    ['fewer than one stopgap placed', set('car_stopgap', 'placed', '0'), CHECK],
    ['a finding decided without a disposition', set('car_finding', 'state', '"decided"'), CHECK],
    ['a finding with a change that is not there', set('car_finding', 'change', '"D-none"'), FOREIGN],
    ['a signature by nobody', set('car_signature', 'by', '"nobody"'), FOREIGN],
    [
      'a signature for a joint of another car',
      add('car_signature', 'C2', 'x', signature('final-joint', 'J-1')),
      FOREIGN,
    ],
    ['a signature for no kind of thing', add('car_signature', 'C1', 'x', signature('wave', 'J-1')), CHECK],
    [
      'a signature that no command gave',
      add('car_signature', 'C1', 'no-command', signature('final-joint', 'J-1')),
      FOREIGN,
    ],
    ['a hold without a reason', add('car_hold', 'C1', 'h', { scope: 'gate', reason: '' }), CHECK],
    ['a hold of no scope', add('car_hold', 'C1', 'h', { scope: 'all', reason: 'x' }), CHECK],
    ['a part of no piece', add('car_part', 'C1', 'p', { state: 'fitted', piece: 0 }), CHECK],
    ['a condition that is neither', add('car_condition', 'C1', 'c', { because: 'x' }), NOT_NULL],
    ['a row of a car that is not there', add('car_note', 'C9', 'n', { by: 'tom' }), FOREIGN],
    ['a row without a key', add('car_note', 'C1', '', { by: 'tom' }), CHECK],
    [
      'the same row twice',
      `INSERT INTO car_joint (car, key, row) SELECT car, key, row FROM car_joint`,
      UNIQUE,
    ],
    ['a row that is no object', `UPDATE car_joint SET row = '[]'`, NOT_NULL],
    ['a column that says something else than its row', `UPDATE car_joint SET level = 'verified'`, GENERATED],
    ['a person without a name', set('person', 'name', '""'), CHECK],
    ['a tool used less than never', set('tool', 'cycles,used', '-1'), CHECK],
    [
      'a lot of less than nothing',
      `INSERT INTO lot (id, row) VALUES ('L-9', '{"id":"L-9","quantity":-1}')`,
      CHECK,
    ],
    [
      'a suspicion of no tool',
      `INSERT INTO tool_suspect (tool, nr, row) VALUES ('T-99', 0, '{"from":"x"}')`,
      FOREIGN,
    ],
    [
      'a second shop in one database',
      `INSERT INTO shop_setting (id, name, zone) VALUES (2, 'x', 'UTC')`,
      CHECK,
    ],
    [
      'the same revision under another hash',
      `INSERT INTO plan_revision (hash, model, revision, document) SELECT repeat('d', 64), model, revision, document FROM plan_revision`,
      UNIQUE,
    ],
    ['a head without entries', `INSERT INTO stream (id, version, head) VALUES ('car:C7', 3, '')`, CHECK],
    ['a stream of no kind', `INSERT INTO stream (id) VALUES ('else')`, CHECK],
  ])('no %s', async (_, sql, state) => {
    expect(await stateOf(owner, sql)).toBe(state);
  });
});
