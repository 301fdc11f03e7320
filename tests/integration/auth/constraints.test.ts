/** The net under it: each constraint attacked by raw SQL, as the app and as the owner of the tables. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import pg from 'pg';
import { knownDevice, authShop } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
const clients: Record<'app' | 'owner', pg.Client | null> = { app: null, owner: null };
beforeAll(async () => {
  shop = await authShop();
  await knownDevice(shop.db, 'tobit');
  clients.app = new pg.Client({ connectionString: shop.fresh.url });
  clients.owner = new pg.Client({ connectionString: shop.fresh.ownerUrl });
  await clients.app.connect();
  await clients.owner.connect();
});
afterAll(async () => {
  await clients.app?.end();
  await clients.owner?.end();
  await shop.close();
});

const codeOf = async (as: 'app' | 'owner', sql: string): Promise<string> => {
  try {
    await clients[as]?.query(sql);
    return 'done';
  } catch (error) {
    return error instanceof pg.DatabaseError ? (error.code ?? '') : String(error);
  }
};

const CHECK = '23514';
const FOREIGN = '23503';
const DENIED = '42501';
const HASH = `'${'a'.repeat(64)}'`;

test.each([
  ['a password as it is', `UPDATE credential SET password_hash = 'open sesame' WHERE person = 'mara'`, CHECK],
  ['a PIN as it is', `UPDATE credential SET pin_hash = '590372' WHERE person = 'tobit'`, CHECK],
  ['no secret at all', `UPDATE credential SET password_hash = NULL, pin_hash = NULL`, CHECK],
  [
    'a secret of nobody',
    `INSERT INTO credential (person, pin_hash, changed_at) VALUES ('nobody', '$argon2id$x', now())`,
    FOREIGN,
  ],
  ['a device named by its cookie', `INSERT INTO device (id) VALUES ('the whole cookie')`, CHECK],
  ['a device that counts backwards from nothing', `UPDATE device SET last_sequence = -1`, CHECK],
  [
    'a session named by its token',
    `INSERT INTO session (id, person, device, made_at, last_seen_at) SELECT 'token', person, device, now(), now() FROM session`,
    CHECK,
  ],
  [
    'a session of nobody',
    `INSERT INTO session (id, person, device, made_at, last_seen_at) SELECT ${HASH}, 'nobody', device, now(), now() FROM session`,
    FOREIGN,
  ],
  [
    'a session on no device',
    `INSERT INTO session (id, person, device, made_at, last_seen_at) VALUES (${HASH}, 'tobit', '0123456789abcdef', now(), now())`,
    FOREIGN,
  ],
  ['a session that ended before it began', `UPDATE session SET ended_at = made_at - interval '1 s'`, CHECK],
  [
    'fewer tries than none',
    `INSERT INTO throttle (person, place, wrong, last_at) VALUES ('x', 'new', -1, now())`,
    CHECK,
  ],
  [
    'a rest that was over when it began',
    `INSERT INTO throttle (person, place, wrong, last_at, until) VALUES ('x', 'new', 5, now(), now() - interval '1 s')`,
    CHECK,
  ],
  [
    'a link named by its token',
    `INSERT INTO enrolment (token, person, made_at, expires_at) VALUES ('token', 'tobit', now(), now() + interval '1 h')`,
    CHECK,
  ],
  [
    'a link for nobody',
    `INSERT INTO enrolment (token, person, made_at, expires_at) VALUES (${HASH}, 'nobody', now(), now() + interval '1 h')`,
    FOREIGN,
  ],
  [
    'a link made by nobody',
    `INSERT INTO enrolment (token, person, made_by, made_at, expires_at) VALUES (${HASH}, 'tobit', 'nobody', now(), now() + interval '1 h')`,
    FOREIGN,
  ],
  [
    'a link that never was good',
    `INSERT INTO enrolment (token, person, made_at, expires_at) VALUES (${HASH}, 'tobit', now(), now())`,
    CHECK,
  ],
])('%s is not kept', async (_, sql, code) => {
  expect(await codeOf('owner', sql)).toBe(code);
});

test.each([
  ['hand a session to somebody else', `UPDATE session SET person = 'ada'`],
  ['make a session younger', `UPDATE session SET made_at = now()`],
  ['forget a session', `DELETE FROM session`],
  ['forget who had a secret', `DELETE FROM credential`],
  ['move a secret to somebody else', `UPDATE credential SET person = 'ada'`],
  ['forget tries', `DELETE FROM throttle`],
  ['forget a link', `DELETE FROM enrolment`],
  ['turn a link to somebody else', `UPDATE enrolment SET person = 'ada'`],
  ['say that somebody else made it', `UPDATE enrolment SET made_by = 'ada'`],
])('the app can’t %s', async (_, sql) => {
  expect(await codeOf('app', sql)).toBe(DENIED);
});
