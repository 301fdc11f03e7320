/** The shop's people: what they may do, until when, and whether they can sign. */
import 'server-only';
import type { Day, PersonId } from '@/lib/domain/base/vocabulary';
import { clocksOf } from '@/lib/domain/clocks';
import { isQualified } from '@/lib/domain/shop/rows';
import type { Person, Qualification, Shop } from '@/lib/domain/shop/rows';
import { mayEnrol, needsPassword } from '@/lib/server/auth/enrolment';
import type { Database } from '@/lib/server/database';
import { loadFloor } from '@/lib/server/load/car';
import { loadPlans } from '@/lib/server/load/plan';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { initialsOf } from '@/lib/server/queries/board/words';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import type { HeldQualification, PeopleView } from '@/lib/wire/views/set-up';
import { dayWords, whenWords } from '@/lib/wire/views/when';

export const peopleView = async (db: Database, who: Person): Promise<PeopleView> => {
  const [shop, { zone }, access, atWork] = await Promise.all([
    loadShop(db),
    shopSetting(db),
    accessOf(db),
    atWorkOf(db),
  ]);
  const today = shopDay(zone)(new Date().toISOString());
  const when = whenWords(zone, today);
  const here = Object.values(shop.people).filter(({ left }) => !left);
  return {
    people: here.map((person) => {
      const { password, pin, link, rest } = access.get(person.id) ?? NOTHING;
      const wantsPassword = needsPassword(person.roles);
      return {
        id: person.id,
        name: person.name,
        initials: initialsOf(person.name),
        roles: person.roles,
        held: heldOf(person, today),
        secrets: secretWords(wantsPassword, password, pin),
        needsLink: !pin || (wantsPassword && !password),
        linkUntil: link === null ? null : when(link.toISOString()),
        restsUntil: rest === null ? null : shopTime(zone)(rest.toISOString()),
        mayLink: mayEnrol(who, person),
        isOneself: person.id === who.id,
        mayChangeRoles: who.roles.includes('owner'),
        mayRemove: person.id !== who.id && (!person.roles.includes('owner') || who.roles.includes('owner')),
        atWork: atWork.get(person.id) ?? null,
      };
    }),
    keys: await keysOf(db, shop, here),
    takenIds: Object.keys(shop.people),
    today,
    yesterday: daysOn(today, -1),
  };
};

/** Whose clock runs on what. */
const atWorkOf = async (db: Database): Promise<ReadonlyMap<PersonId, string>> =>
  new Map(
    Object.entries(clocksOf(await loadFloor(db))).map(([person, clocks]) => [
      person,
      clocks.map(({ car, operation }) => `${operation} of ${car}`).join(' and '),
    ]),
  );

interface Access {
  readonly password: boolean;
  readonly pin: boolean;
  readonly link: Date | null;
  readonly rest: Date | null;
}

const NOTHING: Access = { password: false, pin: false, link: null, rest: null };

/** Whether there are secrets, never what. */
const accessOf = async (db: Database): Promise<ReadonlyMap<string, Access>> => {
  const found = await db.$queryRaw<(Access & { readonly id: string })[]>`
    SELECT p.id, coalesce(c.password_hash IS NOT NULL, false) AS password, coalesce(c.pin_hash IS NOT NULL, false) AS pin,
      (SELECT max(expires_at) FROM enrolment e
        WHERE e.person = p.id AND e.used_at IS NULL AND e.expires_at > now()) AS link,
      (SELECT max(until) FROM throttle t WHERE t.person = p.id AND t.until > now()) AS rest
    FROM person p LEFT JOIN credential c ON c.person = p.id`;
  return new Map(found.map(({ id, ...access }) => [id, access]));
};

const secretWords = (wantsPassword: boolean, password: boolean, pin: boolean): string => {
  if (!wantsPassword) return pin ? 'PIN set' : 'no PIN yet';
  if (password && pin) return 'password and PIN set';
  return password ? 'no PIN yet' : pin ? 'no password yet' : 'no password, no PIN yet';
};

const SOON_DAYS = 30;

/** One line for each that they ever held: of several records of a name the one that counts today, or goes furthest. */
const heldOf = (person: Person, today: Day): readonly HeldQualification[] =>
  [...new Set(person.qualifications.map(({ key }) => key))].map((key) => {
    const records = person.qualifications.filter((each) => each.key === key);
    const holding = records.filter((each) => isQualified({ ...person, qualifications: [each] }, key, today));
    return heldWords(key, furthest(holding.length > 0 ? holding : records), today);
  });

const furthest = (records: readonly Qualification[]): Qualification | undefined =>
  records.toSorted((a, b) => ((a.until ?? FOREVER) < (b.until ?? FOREVER) ? 1 : -1))[0];

const FOREVER = '9999-12-31';

const heldWords = (key: string, record: Qualification | undefined, today: Day): HeldQualification => {
  const { from, until } = record ?? {};
  const isEnding = until !== undefined && until < daysOn(today, SOON_DAYS);
  const mayEnd = until === undefined || until >= today;
  if (from !== undefined && from > today)
    return { key, says: `from ${dayWords(from, today)}`, isEnding, mayEnd };
  if (until === undefined) return { key, says: 'holds', isEnding, mayEnd };
  const says = until < today ? `ended ${dayWords(until, today)}` : dayWords(until, today);
  return { key, says, isEnding, mayEnd };
};

const daysOn = (day: Day, days: number): Day =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

const keysOf = async (db: Database, shop: Shop, people: readonly Person[]): Promise<readonly string[]> => {
  const plans = Object.values(await loadPlans(db, Object.keys(shop.plans)));
  const asked = plans.flatMap(({ operations, joints }) => [
    ...Object.values(operations ?? {}).flatMap(({ who }) => who ?? []),
    ...Object.values(joints ?? {}).flatMap(({ who, verifier }) => [who ?? [], verifier ?? []].flat()),
  ]);
  const held = people.flatMap(({ qualifications }) => qualifications.map(({ key }) => key));
  return [...new Set([...asked, ...held])].sort();
};
