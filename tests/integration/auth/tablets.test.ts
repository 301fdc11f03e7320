/** The shop's own tablets: who is in where, and where a PIN is taken; the same from two instances of the app. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import pg from 'pg';
import { atTheLock } from '@/lib/server/auth/lock';
import { seatOf, startSession } from '@/lib/server/auth/session-row';
import type { Seat } from '@/lib/server/auth/session-row';
import { signIn } from '@/lib/server/auth/sign-in';
import { deviceOf, enrolByCode, makeTabletCode, revokeTablet } from '@/lib/server/auth/tablets';
import { deviceIdOf, newToken } from '@/lib/server/auth/tokens';
import type { Database } from '@/lib/server/database';
import { answerTo } from '@/lib/server/door';
import type { DoorAnswer } from '@/lib/wire/door';
import { SECRETS, authShop, enrolledTablet, knownDevice } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
beforeAll(async () => {
  shop = await authShop();
});
beforeEach(() => shop.reset());
afterAll(() => shop.close());

const asOwner = async (sql: string): Promise<void> => {
  const client = new pg.Client({ connectionString: shop.fresh.ownerUrl });
  await client.connect();
  await client.query(sql);
  await client.end();
};

const benchIn = async (cookie: string | null, db: Database = shop.db): Promise<string> =>
  (await signIn(db, { door: 'bench', name: 'tobit', secret: SECRETS.tobit.pin, deviceToken: cookie }))
    .outcome;

const seated = async (session: string): Promise<Seat> => {
  const seat = await seatOf(shop.db, session);
  if (seat === null) throw new Error('nobody is there');
  return seat;
};

const sign = (
  seat: Seat,
  person: 'ada' | 'mara' | 'ines',
  pin: string = SECRETS[person].pin,
): Promise<DoorAnswer> =>
  answerTo(
    shop.db,
    {
      command: {
        id: randomUUID(),
        doneAt: new Date().toISOString(),
        claim: { type: 'clear-lot', lot: 'L-1', reason: 'x' },
      },
      signer: { person, pin },
    },
    seat,
  );

const NAMED = { name: 'Bench 2', minutes: 7 };

describe('a browser that nobody enrolled', () => {
  test('takes no PIN, right or wrong, and counts none', async () => {
    expect(await benchIn(null)).toBe('no-tablet');
    expect(await benchIn(newToken())).toBe('no-tablet');
    expect(await shop.db.throttle.count()).toBe(0);
    expect(await shop.db.session.count()).toBe(0);
  });

  test('is a desk for owner and lead, who sign there with their own PIN and nobody else’s', async () => {
    const signed = await signIn(shop.db, {
      door: 'desk',
      name: 'mara',
      secret: SECRETS.mara.password,
      deviceToken: newToken(),
    });
    const seat = await seated(signed.outcome === 'in' ? signed.session : '');
    expect((await sign(seat, 'mara')).outcome).toBe('refused');
    const other = await sign(seat, 'ines');
    expect(other.outcome === 'not-allowed' ? other.says : '').toContain('only Mara Mill signs here');
    expect(await shop.db.throttle.count()).toBe(0);
  });

  test('lets no technician’s session stand, however it began', async () => {
    expect(await seatOf(shop.db, await startSession(shop.db, 'tobit', newToken()))).toBeNull();
  });
});

describe('a code', () => {
  test('enrols the browser it is typed in, in any case, once', async () => {
    const { code } = await makeTabletCode(shop.db, NAMED, 'ada');
    const cookie = newToken();
    expect(await enrolByCode(shop.other, code.toLowerCase().replace('-', ' '), cookie)).toBe('Bench 2');
    expect(await deviceOf(shop.db, deviceIdOf(cookie))).toMatchObject({
      standing: 'tablet',
      name: 'Bench 2',
      lockMinutes: 7,
      enrolledBy: 'Ada Quern',
    });
    expect(await benchIn(cookie)).toBe('in');
    expect(await enrolByCode(shop.db, code, newToken())).toBeNull();
  });

  test('counts for one of two who type it at the same moment', async () => {
    const { code } = await makeTabletCode(shop.db, NAMED, 'ada');
    const both = await Promise.all([
      enrolByCode(shop.db, code, newToken()),
      enrolByCode(shop.other, code, newToken()),
    ]);
    expect(both.filter((name) => name !== null)).toEqual(['Bench 2']);
  });

  test('is void after a quarter of an hour, and never stands readable', async () => {
    const { code } = await makeTabletCode(shop.db, NAMED, 'ada');
    const rows = JSON.stringify(await shop.db.tabletCode.findMany());
    expect(rows).not.toContain(code.replace('-', ''));
    await asOwner(`UPDATE tablet_code SET made_at = made_at - interval '16 minutes',
      expires_at = expires_at - interval '16 minutes' WHERE used_at IS NULL`);
    expect(await enrolByCode(shop.db, code, newToken())).toBeNull();
    expect(await enrolByCode(shop.db, 'AAAA-AAAA', newToken())).toBeNull();
  });
});

describe('a tablet that is revoked', () => {
  test('has nobody on it with the next request, and takes no PIN, on every instance', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    const lead = await startSession(shop.db, 'mara', cookie);
    expect(await seatOf(shop.other, session)).not.toBeNull();
    expect(await revokeTablet(shop.other, deviceIdOf(cookie), 'mara')).toBe(true);
    expect(await seatOf(shop.db, session)).toBeNull();
    expect(await seatOf(shop.db, lead)).toBeNull();
    expect(await benchIn(cookie)).toBe('no-tablet');
    expect(await benchIn(cookie, shop.other)).toBe('no-tablet');
    expect(await revokeTablet(shop.db, deviceIdOf(cookie), 'mara')).toBe(false);
  });

  test('signs nothing, not even for whoever came by password, and looks at no PIN', async () => {
    const cookie = await enrolledTablet(shop.db);
    await revokeTablet(shop.db, deviceIdOf(cookie), 'ada');
    const seat = await seated(await startSession(shop.db, 'mara', cookie));
    for (const pin of [SECRETS.mara.pin, '100294']) {
      const answer = await sign(seat, 'mara', pin);
      expect(answer.outcome === 'not-allowed' ? answer.says : '').toContain('taken off');
    }
    expect(await shop.db.throttle.count()).toBe(0);
    expect(
      (await atTheLock(shop.db, { act: 'unlock', pin: SECRETS.mara.pin }, seat, cookie)).answer.outcome,
    ).toBe('not-allowed');
  });

  test('comes back when an owner enrols it again; sessions of before stay ended', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    await revokeTablet(shop.db, deviceIdOf(cookie), 'ada');
    const { code } = await makeTabletCode(shop.db, NAMED, 'ada');
    await enrolByCode(shop.db, code, cookie);
    expect(await benchIn(cookie)).toBe('in');
    expect(await seatOf(shop.db, session)).toBeNull();
  });
});

describe('the lock', () => {
  test('covers by a word of the screen, or after the tablet’s own minutes; a hand counts, a request does not', async () => {
    const { session } = await knownDevice(shop.db, 'tobit');
    const seat = await seated(session);
    expect(seat).toMatchObject({ isLocked: false, idleMinutes: 5 });
    await asOwner(`UPDATE session SET active_at = now() - interval '7 minutes'`);
    expect(await seatOf(shop.other, session)).toMatchObject({ isLocked: true });
    await asOwner(`UPDATE session SET active_at = now() - interval '3 minutes'`);
    await atTheLock(shop.db, { act: 'here' }, seat, null);
    await atTheLock(shop.db, { act: 'lock' }, seat, null);
    expect(await seatOf(shop.other, session)).toMatchObject({ isLocked: true });
    await atTheLock(shop.db, { act: 'here' }, seat, null);
    expect(await seatOf(shop.db, session)).toMatchObject({ isLocked: true });
  });

  test('opens to the PIN of who was there, counts wrong ones, and keeps the session', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    const seat = await seated(session);
    await atTheLock(shop.db, { act: 'lock' }, seat, cookie);
    const wrong = await atTheLock(shop.db, { act: 'unlock', pin: SECRETS.ines.pin }, seat, cookie);
    expect(wrong.answer.outcome).toBe('wrong-pin');
    expect(await shop.db.throttle.findMany({ where: { person: 'tobit' } })).toMatchObject([{ wrong: 1 }]);
    expect(await seatOf(shop.db, session)).toMatchObject({ isLocked: true });
    await atTheLock(shop.db, { act: 'unlock', pin: SECRETS.tobit.pin }, seat, cookie);
    expect(await seatOf(shop.db, session)).toMatchObject({ isLocked: false, person: { id: 'tobit' } });
  });

  test('lets another take over in a session of their own; the one before is over', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    const seat = await seated(session);
    const taken = await atTheLock(
      shop.db,
      { act: 'take-over', person: 'ines', pin: SECRETS.ines.pin },
      seat,
      cookie,
    );
    expect(taken.answer).toEqual({ outcome: 'taken-over' });
    expect(await seatOf(shop.db, session)).toBeNull();
    expect(await seatOf(shop.db, taken.session ?? '')).toMatchObject({
      person: { id: 'ines' },
      device: seat.device,
      isLocked: false,
    });
  });

  test('a lead or an owner comes by no PIN to somebody else’s screen', async () => {
    const { cookie, session } = await knownDevice(shop.db, 'tobit');
    const seat = await seated(session);
    const tried = await atTheLock(
      shop.db,
      { act: 'take-over', person: 'mara', pin: SECRETS.mara.pin },
      seat,
      cookie,
    );
    expect(tried).toMatchObject({ answer: { outcome: 'wrong-pin' }, session: null });
    expect(await seatOf(shop.db, session)).not.toBeNull();
  });
});
