/** Who is in, and who no longer: asked of the database each time. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import pg from 'pg';
import { encode } from 'next-auth/jwt';
import { setCredential } from '@/lib/server/auth/credentials';
import { tokenIn } from '@/lib/server/auth/session';
import { endSession, noteContact, seatOf, startSession } from '@/lib/server/auth/session-row';
import { signIn } from '@/lib/server/auth/sign-in';
import { deviceIdOf, newToken } from '@/lib/server/auth/tokens';
import { SECRETS, ZONE, authShop, enrolledTablet, knownDevice } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
beforeAll(async () => {
  shop = await authShop();
});
beforeEach(() => shop.reset());
afterAll(() => shop.close());

/** As the owner of the tables: the app itself can't put a session back in time. */
const asOwner = async (sql: string): Promise<void> => {
  const client = new pg.Client({ connectionString: shop.fresh.ownerUrl });
  await client.connect();
  await client.query(sql);
  await client.end();
};

describe('a session', () => {
  test('holds who, where and the shop’s calendar', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    expect(await seatOf(shop.other, session)).toMatchObject({
      person: { id: 'tobit', name: 'Tobit Fenn', roles: ['technician'] },
      device: deviceIdOf(cookie),
      lastContact: null,
      lastSequence: 0n,
      zone: ZONE,
    });
    expect(await seatOf(shop.db, newToken())).toBeNull();
  });

  test('ends at once, everywhere', async () => {
    const { session } = await knownDevice(shop.db, 'tobit');
    const seat = await seatOf(shop.db, session);
    await endSession(shop.other, seat?.session ?? '');
    expect(await seatOf(shop.db, session)).toBeNull();
  });

  test('lasts twelve hours, by the database’s clock', async () => {
    const { session } = await knownDevice(shop.db, 'tobit');
    await asOwner(`UPDATE session SET made_at = now() - interval '11 hours 59 minutes'`);
    expect(await seatOf(shop.db, session)).not.toBeNull();
    await asOwner(`UPDATE session SET made_at = now() - interval '12 hours 1 second'`);
    expect(await seatOf(shop.db, session)).toBeNull();
  });

  test('is over with the very command that removes the person', async () => {
    await shop.give('ada', { type: 'add-person', person: 'wes', name: 'Wes Pardoe', roles: ['technician'] });
    const { session } = await knownDevice(shop.db, 'wes');
    expect(await seatOf(shop.db, session)).not.toBeNull();
    expect(await shop.give('mara', { type: 'remove-person', person: 'wes' })).toBe('accepted');
    expect(await seatOf(shop.db, session)).toBeNull();
    expect(await seatOf(shop.other, session)).toBeNull();
  });

  test('notes once a minute that it was seen', async () => {
    const { session } = await knownDevice(shop.db, 'tobit');
    await asOwner(
      `UPDATE session SET made_at = now() - interval '1 hour', last_seen_at = now() - interval '2 minutes'`,
    );
    await seatOf(shop.db, session);
    const [row] = await shop.db.session.findMany();
    expect(Date.now() - (row?.lastSeenAt.getTime() ?? 0)).toBeLessThan(60_000);
  });

  test('keeps what its device last said; neither goes back', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    await noteContact(shop.db, deviceIdOf(cookie), '2026-11-25T10:00:00.000Z', 7);
    await noteContact(shop.db, deviceIdOf(cookie), '2026-11-25T09:00:00.000Z', 5);
    expect(await seatOf(shop.db, session)).toMatchObject({
      lastContact: new Date('2026-11-25T10:00:00.000Z'),
      lastSequence: 7n,
    });
  });
});

describe('the cookie', () => {
  const SECRET = 'only for tests';
  beforeAll(() => {
    process.env.NEXTAUTH_SECRET = SECRET;
  });
  const sealed = (token: object, secret = SECRET, maxAge = 60): Promise<string> =>
    encode({ token: token as { session: string }, secret, maxAge });

  test('sealed by us it gives the token', async () => {
    expect(await tokenIn(await sealed({ session: 'abc' }))).toBe('abc');
  });

  test.each<[string, () => Promise<string | undefined> | string | undefined]>([
    ['none', () => undefined],
    ['empty', () => ''],
    ['rubbish', () => 'rubbish'],
    ['half an escape', () => '%E0%A4%A'],
    ['alg none', () => 'eyJhbGciOiJub25lIn0.eyJzZXNzaW9uIjoiYWJjIn0.'],
    ['signed, not sealed', () => 'eyJhbGciOiJIUzI1NiJ9.eyJzZXNzaW9uIjoiYWJjIn0.AAAA'],
    ['sealed with another key', () => sealed({ session: 'abc' }, 'another')],
    ['out of time', () => sealed({ session: 'abc' }, SECRET, -60)],
    ['without a token in it', () => sealed({ sub: 'tobit' })],
    ['with something else for a token', () => sealed({ session: 7 })],
    [
      'one sign changed',
      // Not the last: some of its bits say nothing.
      async () => (await sealed({ session: 'abc' })).replace(/.(?=.{9}$)/, (it) => (it === 'A' ? 'B' : 'A')),
    ],
    ['five kilobytes', () => 'A'.repeat(5120)],
  ])('%s: nobody', async (_, cookie) => {
    expect(await tokenIn(await cookie())).toBeNull();
  });
});

describe('signing in', () => {
  const at = async (door: 'desk' | 'bench', name: string, secret: string): Promise<string> =>
    (await signIn(shop.db, { door, name, secret, deviceToken: await enrolledTablet(shop.db) })).outcome;

  test('by id or by name, in any case; a session begins', async () => {
    expect(await at('bench', 'tobit', SECRETS.tobit.pin)).toBe('in');
    expect(await at('desk', ' mara MILL ', SECRETS.mara.password)).toBe('in');
    expect(await shop.db.session.count()).toBe(2);
  });

  test('owner and lead by the desk only, technicians by the bench only', async () => {
    expect(await at('bench', 'mara', SECRETS.mara.pin)).toBe('wrong');
    expect(await at('bench', 'ada', SECRETS.ada.pin)).toBe('wrong');
    expect(await at('desk', 'tobit', SECRETS.tobit.pin)).toBe('wrong');
    expect(await shop.db.session.count()).toBe(0);
  });

  test('a name that two have is nobody’s; their ids are', async () => {
    for (const person of ['sam', 'sam-2'])
      await shop.give('ada', { type: 'add-person', person, name: 'Sam Reed', roles: ['technician'] });
    await setCredential(shop.db, 'sam-2', { pin: '930582' });
    expect(await at('bench', 'Sam Reed', '930582')).toBe('wrong');
    expect(await at('bench', 'sam-2', '930582')).toBe('in');
  });

  test('whoever has left is nobody', async () => {
    await shop.give('ada', { type: 'add-person', person: 'gone', name: 'Gone Too', roles: ['technician'] });
    await setCredential(shop.db, 'gone', { pin: '930582' });
    await shop.give('ada', { type: 'remove-person', person: 'gone' });
    expect(await at('bench', 'gone', '930582')).toBe('wrong');
  });

  test('two sign-ins in one browser are two sessions on one device', async () => {
    const cookie = newToken();
    await startSession(shop.db, 'tobit', cookie);
    await startSession(shop.db, 'ines', cookie);
    const rows = await shop.db.session.findMany();
    expect(new Set(rows.map(({ deviceId }) => deviceId)).size).toBe(1);
  });
});
