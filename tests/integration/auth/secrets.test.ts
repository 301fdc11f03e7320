/** Links, passwords and PINs on a real database: what is kept, what is not, and what a change ends. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import pg from 'pg';
import { checkPassword, checkPin } from '@/lib/server/auth/check';
import { setCredential } from '@/lib/server/auth/credentials';
import { enrol, enrollingOf, makeEnrolment, mayEnrol } from '@/lib/server/auth/enrolment';
import { seatOf } from '@/lib/server/auth/session-row';
import type { Role } from '@/lib/domain/base/vocabulary';
import { SECRETS, authShop, knownDevice } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
beforeAll(async () => {
  shop = await authShop();
});
beforeEach(() => shop.reset());
afterAll(() => shop.close());

const hasPin = async (person: string, secret: string): Promise<boolean> =>
  (await checkPin(shop.db, { person, secret, device: null }, false)).outcome === 'right';

describe('setting', () => {
  test('a new PIN ends every session of that person and nobody else’s; the old one is worth nothing', async () => {
    const tobit = await knownDevice(shop.db, 'tobit');
    const ines = await knownDevice(shop.db, 'ines');
    expect(await setCredential(shop.db, 'tobit', { pin: '730158' })).toEqual([]);
    expect(await seatOf(shop.db, tobit.session)).toBeNull();
    expect(await seatOf(shop.db, ines.session)).not.toBeNull();
    expect([await hasPin('tobit', '730158'), await hasPin('tobit', SECRETS.tobit.pin)]).toEqual([
      true,
      false,
    ]);
    await setCredential(shop.db, 'tobit', { pin: SECRETS.tobit.pin });
  });

  test('what is too simple is not set, but for the demo', async () => {
    expect(await setCredential(shop.db, 'ines', { pin: '222222' })).toEqual(['pin-simple']);
    expect(await hasPin('ines', SECRETS.ines.pin)).toBe(true);
    expect(await setCredential(shop.db, 'mara', { password: 'Mara Mill 2026 Mill' })).toEqual([
      'password-names',
    ]);
    expect(await setCredential(shop.db, 'ines', { pin: '222222' }, { unchecked: true })).toEqual([]);
    expect(await hasPin('ines', '222222')).toBe(true);
    await setCredential(shop.db, 'ines', { pin: SECRETS.ines.pin });
  });

  test('setting the PIN leaves the password as it was', async () => {
    await setCredential(shop.db, 'mara', { pin: '640925' });
    const tried = { person: 'mara', secret: SECRETS.mara.password, device: null };
    expect(await checkPassword(shop.db, tried)).toEqual({ outcome: 'right' });
    await setCredential(shop.db, 'mara', { pin: SECRETS.mara.pin });
  });

  test('the same letters from another keyboard are the same password; nothing is cut off', async () => {
    const composed = `caf\u00e9 at the crossroads ${'wheel nuts '.repeat(12)}end`;
    await setCredential(shop.db, 'mara', { password: composed });
    const fits = async (secret: string): Promise<string> =>
      (await checkPassword(shop.db, { person: 'mara', secret, device: null })).outcome;
    expect(await fits(composed.normalize('NFD'))).toBe('right');
    expect(await fits(composed.slice(0, -1))).toBe('wrong');
    await setCredential(shop.db, 'mara', { password: SECRETS.mara.password });
  });

  test('nowhere in the database does a secret stand as it is', async () => {
    const { token } = await makeEnrolment(shop.db, { person: 'tobit', by: 'mara' });
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    const client = new pg.Client({ connectionString: shop.fresh.superUrl });
    await client.connect();
    const tables = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public'`,
    );
    let dump = '';
    for (const { name } of tables.rows)
      dump +=
        (
          await client.query<{ all: string | null }>(
            `SELECT string_agg(t::text, ' ') AS all FROM "${name}" t`,
          )
        ).rows[0]?.all ?? '';
    await client.end();
    expect(dump).toContain('$argon2id$v=19$m=19456,t=2,p=1$');
    for (const secret of [
      ...Object.values(SECRETS).flatMap((each) => Object.values(each)),
      token,
      cookie,
      session,
    ])
      expect(dump).not.toContain(secret);
  });
});

describe('links', () => {
  test('a technician sets a PIN, once', async () => {
    const { token } = await makeEnrolment(shop.db, { person: 'tobit', by: 'mara' });
    expect(await enrollingOf(shop.db, token)).toEqual({
      person: 'tobit',
      name: 'Tobit Fenn',
      roles: ['technician'],
    });
    expect(await enrol(shop.db, token, { pin: '111111' })).toEqual({
      outcome: 'faults',
      faults: ['pin-simple'],
    });
    expect(await enrol(shop.db, token, { pin: '730158' })).toEqual({
      outcome: 'enrolled',
      person: 'tobit',
      at: 'bench',
    });
    expect(await hasPin('tobit', '730158')).toBe(true);
    expect(await enrol(shop.db, token, { pin: '928374' })).toEqual({ outcome: 'no-link' });
    await setCredential(shop.db, 'tobit', { pin: SECRETS.tobit.pin });
  });

  test('a lead needs both; a technician’s password is not looked at', async () => {
    const lead = await makeEnrolment(shop.db, { person: 'mara', by: 'ada' });
    expect(await enrol(shop.db, lead.token, { pin: '640925' })).toMatchObject({
      faults: ['password-too-short'],
    });
    expect(await enrol(shop.db, lead.token, { password: SECRETS.mara.password })).toMatchObject({
      faults: ['pin-not-six-figures'],
    });
    const { token } = await makeEnrolment(shop.db, { person: 'ines', by: 'mara' });
    await enrol(shop.db, token, { pin: SECRETS.ines.pin, password: 'a password nobody asked for' });
    const [kept] = await shop.db.credential.findMany({ where: { person: 'ines' } });
    expect(kept?.passwordHash).toBeNull();
  });

  test('of two at the same moment one finds it used', async () => {
    const { token } = await makeEnrolment(shop.db, { person: 'tobit', by: 'mara' });
    const both = await Promise.all(['730158', '928374'].map((pin) => enrol(shop.db, token, { pin })));
    expect(both.map(({ outcome }) => outcome).sort()).toEqual(['enrolled', 'no-link']);
    await setCredential(shop.db, 'tobit', { pin: SECRETS.tobit.pin });
  });

  test('a newer one ends the one before; an old one ends by itself; whoever left has none', async () => {
    const first = await makeEnrolment(shop.db, { person: 'tobit', by: 'mara' });
    const second = await makeEnrolment(shop.db, { person: 'tobit', by: 'mara' });
    expect(await enrollingOf(shop.db, first.token)).toBeNull();
    expect(await enrollingOf(shop.db, second.token)).not.toBeNull();
    await shop.db
      .$executeRaw`UPDATE enrolment SET expires_at = made_at + interval '1 millisecond' WHERE used_at IS NULL`;
    expect(await enrol(shop.db, second.token, { pin: '730158' })).toEqual({ outcome: 'no-link' });
    await shop.give('ada', { type: 'add-person', person: 'gone', name: 'Wes Pardoe', roles: ['technician'] });
    const third = await makeEnrolment(shop.db, { person: 'gone', by: 'mara' });
    await shop.give('ada', { type: 'remove-person', person: 'gone' });
    expect(await enrol(shop.db, third.token, { pin: '730158' })).toEqual({ outcome: 'no-link' });
  });

  test.each<[string, readonly Role[], readonly Role[], boolean]>([
    ['an owner for an owner', ['owner'], ['owner'], true],
    ['a lead for a technician', ['lead'], ['technician'], true],
    ['a lead for a lead', ['lead'], ['lead'], true],
    ['a lead for an owner', ['lead'], ['owner', 'technician'], false],
    ['a technician for themselves', ['technician'], ['technician'], false],
  ])('%s', (_, by, whom, may) => {
    const person = { id: 'x', name: 'X', qualifications: [], left: false };
    expect(mayEnrol({ ...person, roles: by }, { ...person, roles: whom })).toBe(may);
  });
});
