/** Guessing is slowed down: for the one who guesses, not for everybody, and over all instances together. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { checkPin } from '@/lib/server/auth/check';
import { signIn } from '@/lib/server/auth/sign-in';
import { liftRest } from '@/lib/server/auth/throttle';
import { deviceIdOf } from '@/lib/server/auth/tokens';
import { SECRETS, authShop, enrolledTablet, knownDevice, passTime } from './shop';
import type { AuthShop } from './shop';

let shop: AuthShop;
beforeAll(async () => {
  shop = await authShop();
});
beforeEach(() => shop.reset());
afterAll(() => shop.close());

const wrongPin = (nr: number): string => String(100_000 + nr * 7919).slice(0, 6);

/** The rests there are, in seconds. */
const STEPS = [30, 60, 120, 240, 480, 900];

/** One try at the bench; `in`, `wrong`, or which rest it is in. */
const tryIn = async (
  cookie: string | null,
  name: string,
  pin: string,
  db = shop.db,
): Promise<string | number> => {
  const done = await signIn(db, { door: 'bench', name, secret: pin, deviceToken: cookie });
  if (done.outcome !== 'resting') return done.outcome;
  // The column rounds to the millisecond, upward too, and the answer may be here within it.
  const left = (done.until.getTime() - Date.now() - 1) / 1000;
  return STEPS.find((step) => left <= step) ?? left;
};

const wrongTimes = async (
  cookie: string | null,
  name: string,
  times: number,
): Promise<readonly (string | number)[]> => {
  const said: (string | number)[] = [];
  for (let nr = 0; nr < times; nr += 1) said.push(await tryIn(cookie, name, wrongPin(nr)));
  return said;
};

describe('one person, one device', () => {
  test('the fifth wrong one brings 30 s, in which the right one is not looked at', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    expect(await wrongTimes(cookie, 'tobit', 5)).toEqual(['wrong', 'wrong', 'wrong', 'wrong', 30]);
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe(30);
    await passTime(shop.db, 31);
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe('in');
  });

  test('each further wrong one doubles it, up to a quarter of an hour', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    await wrongTimes(cookie, 'tobit', 5);
    const rests: (string | number)[] = [];
    for (let nr = 5; nr < 12; nr += 1) {
      await passTime(shop.db, 901);
      rests.push(await tryIn(cookie, 'tobit', wrongPin(nr)));
    }
    expect(rests).toEqual([60, 120, 240, 480, 900, 900, 900]);
  });

  test('the right one ends the count; so does a day without a try', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    await wrongTimes(cookie, 'tobit', 4);
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe('in');
    expect(await wrongTimes(cookie, 'tobit', 4)).toEqual(['wrong', 'wrong', 'wrong', 'wrong']);
    await passTime(shop.db, 25 * 3600);
    expect(await wrongTimes(cookie, 'tobit', 4)).toEqual(['wrong', 'wrong', 'wrong', 'wrong']);
  });

  test('forty guesses at once are counted one by one: five are looked at', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    const said = await Promise.all(
      Array.from({ length: 40 }, (_, nr) => tryIn(cookie, 'tobit', wrongPin(nr))),
    );
    expect(said.filter((each) => each === 'wrong')).toHaveLength(4);
    expect(said.filter((each) => typeof each === 'number')).toHaveLength(36);
    const [line] = await shop.db.throttle.findMany({ where: { person: 'tobit' } });
    expect(line?.wrong).toBe(5);
  });

  test('two instances count together', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    for (const nr of [0, 1, 2, 3])
      await tryIn(cookie, 'tobit', wrongPin(nr), nr % 2 === 0 ? shop.db : shop.other);
    expect(await tryIn(cookie, 'tobit', wrongPin(5), shop.other)).toBe(30);
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin, shop.db)).toBe(30);
  });
});

describe('nobody locks anybody out of everywhere', () => {
  test('a rest holds for the device it was brought upon', async () => {
    const bench = await knownDevice(shop.db, 'tobit');
    const phone = await knownDevice(shop.db, 'tobit');
    await wrongTimes(bench.cookie, 'tobit', 5);
    expect(await tryIn(bench.cookie, 'tobit', SECRETS.tobit.pin)).toBe(30);
    expect(await tryIn(phone.cookie, 'tobit', SECRETS.tobit.pin)).toBe('in');
  });

  test('and for that name: everybody else goes on there', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    await wrongTimes(cookie, 'tobit', 5);
    expect(await tryIn(cookie, 'ines', SECRETS.ines.pin)).toBe('in');
  });

  test('tablets that the person never signed in on are one place, and do not touch the known ones', async () => {
    const { cookie } = await knownDevice(shop.db, 'tobit');
    const said: (string | number)[] = [];
    for (let nr = 0; nr < 6; nr += 1)
      said.push(await tryIn(await enrolledTablet(shop.db), 'tobit', wrongPin(nr)));
    expect(said).toEqual(['wrong', 'wrong', 'wrong', 'wrong', 30, 30]);
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe('in');
  });

  test('where three places rest at once it is no slip of the finger: all do, until a lead lifts it', async () => {
    for (const cookie of [
      (await knownDevice(shop.db, 'tobit')).cookie,
      (await knownDevice(shop.db, 'tobit')).cookie,
      await enrolledTablet(shop.db),
    ])
      await wrongTimes(cookie, 'tobit', 5);
    const { cookie } = await knownDevice(shop.db, 'tobit');
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe(30);
    await liftRest(shop.db, 'tobit');
    expect(await tryIn(cookie, 'tobit', SECRETS.tobit.pin)).toBe('in');
  });

  test('a device that tries at many names rests for all of them, after twenty', async () => {
    const spraying = await enrolledTablet(shop.db);
    for (let nr = 0; nr < 20; nr += 1) await tryIn(spraying, `name ${String(nr)}`, '123123');
    expect(await tryIn(spraying, 'ines', SECRETS.ines.pin)).toBe(30);
    expect(await tryIn(await enrolledTablet(shop.db), 'ines', SECRETS.ines.pin)).toBe('in');
  });
});

describe('signing on a device where somebody is signed in', () => {
  test('a signer who never signed in there has tries of their own there, not those of strangers', async () => {
    for (let nr = 0; nr < 5; nr += 1) await tryIn(await enrolledTablet(shop.db), 'ines', wrongPin(nr));
    const { cookie } = await knownDevice(shop.db, 'tobit');
    const device = deviceIdOf(cookie);
    const sign = (secret: string) => checkPin(shop.db, { person: 'ines', secret, device }, true);
    expect(await sign(SECRETS.ines.pin)).toEqual({ outcome: 'right' });
    for (let nr = 0; nr < 4; nr += 1)
      expect(await sign(wrongPin(nr))).toEqual({ outcome: 'wrong', until: null });
    const fifth = await sign(wrongPin(4));
    expect(fifth.outcome === 'wrong' && fifth.until !== null).toBe(true);
    expect(await sign(SECRETS.ines.pin)).toMatchObject({ outcome: 'resting' });
  });

  test('signatures at the same moment by the same person are all right', async () => {
    const { cookie } = await knownDevice(shop.db, 'ines');
    const device = deviceIdOf(cookie);
    const all = await Promise.all(
      Array.from({ length: 12 }, () =>
        checkPin(shop.db, { person: 'ines', secret: SECRETS.ines.pin, device }, true),
      ),
    );
    expect(all.every(({ outcome }) => outcome === 'right')).toBe(true);
  });
});

describe('names that nobody has', () => {
  test('are answered like the others, rest like the others, and fill no table', async () => {
    expect(await wrongTimes(await enrolledTablet(shop.db), 'nobody', 5)).toEqual([
      'wrong',
      'wrong',
      'wrong',
      'wrong',
      30,
    ]);
    for (let nr = 0; nr < 20; nr += 1)
      await tryIn(await enrolledTablet(shop.db), `made up ${String(nr)}`, '123123');
    // Apart from each tablet's own line of tries at anybody.
    const lines = await shop.db.throttle.findMany({ where: { person: { not: '' } } });
    expect(lines.every(({ person }) => /^nobody [0-9a-f]{2}$/.test(person))).toBe(true);
  });

  test('take as long: the time of an answer tells nothing', async () => {
    const cookie = await enrolledTablet(shop.db);
    const times = { tobit: Infinity, 'nobody at all': Infinity };
    // The shortest of several, in turns: the machine may be busy with something else.
    for (let nr = 0; nr < 24; nr += 1) {
      const name = nr % 2 === 0 ? 'tobit' : 'nobody at all';
      await shop.db.throttle.updateMany({ data: { wrong: 0, until: null } });
      const from = performance.now();
      await tryIn(cookie, name, wrongPin(nr));
      times[name] = Math.min(times[name], performance.now() - from);
    }
    // The hash takes 12 ms and more: left out, it would be missed.
    expect(times['nobody at all'] / times.tobit).toBeGreaterThan(0.6);
    expect(times['nobody at all'] / times.tobit).toBeLessThan(1.7);
  });
});
