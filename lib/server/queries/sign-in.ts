/** What the sign-in page shows: no more than stands on the wall of the shop anyway. */
import 'server-only';
import type { Role } from '@/lib/domain/base/vocabulary';
import { shopSetting } from '@/lib/server/load/shop';
import type { Database } from '@/lib/server/database';
import { needsPassword } from '@/lib/server/auth/enrolment';
import { restUntil } from '@/lib/server/auth/sign-in';
import type { Door } from '@/lib/server/auth/sign-in';
import { deviceOf, takesPins } from '@/lib/server/auth/tablets';
import type { KnownDevice } from '@/lib/server/auth/tablets';
import { deviceIdOf } from '@/lib/server/auth/tokens';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import { dayWords } from '@/lib/wire/views/when';
import { initialsOf } from '@/lib/server/queries/board/words';
import type { SignInPerson, SignInView, TabletView } from '@/lib/wire/views/sign-in';

interface Asked {
  readonly door: Door | null;
  readonly name: string | null;
  readonly deviceToken: string | null;
}

export const signInView = async (db: Database, { door, name, deviceToken }: Asked): Promise<SignInView> => {
  const [{ name: shop, zone }, signers, device] = await Promise.all([
    shopSetting(db),
    readSigners(db),
    deviceOf(db, deviceToken === null ? null : deviceIdOf(deviceToken)),
  ]);
  const isBenchOpen =
    takesPins(device.standing) && signers.some(({ roles, hasPin }) => hasPin && !needsPassword(roles));
  const at = door ?? (isBenchOpen ? 'bench' : 'desk');
  const until = name === null ? null : await restUntil(db, at, name, deviceToken);
  return {
    shop,
    at,
    people: signers.map(tileOf),
    tablet: tabletView(device, zone),
    owners: signers.filter(({ roles }) => roles.includes('owner')).map((each) => each.name),
    rest:
      until === null
        ? null
        : {
            // Its clock and ours may differ: what is left is counted from now.
            seconds: Math.max(1, Math.ceil((until.getTime() - Date.now()) / 1000)),
            until: shopTime(zone)(until.toISOString()),
          },
  };
};

const tabletView = (device: KnownDevice, zone: string): TabletView => {
  const dayOf = shopDay(zone);
  return {
    standing: device.standing,
    name: device.name,
    says:
      device.standing === 'tablet' && device.enrolledAt !== null
        ? `enrolled by ${device.enrolledBy ?? 'an owner'}, ${dayWords(dayOf(device.enrolledAt.toISOString()), dayOf(new Date().toISOString()))}`
        : '',
    minutes: device.lockMinutes,
  };
};

/** Everybody's tile, as at the door and at a covered screen. */
export const signersIn = async (db: Database): Promise<readonly SignInPerson[]> =>
  (await readSigners(db)).map(tileOf);

const tileOf = ({ id, name, roles, hasPin }: Signer): SignInPerson => ({
  id,
  name,
  initials: initialsOf(name),
  comesBy: needsPassword(roles) ? 'desk' : 'bench',
  says: needsPassword(roles)
    ? `${roles.includes('owner') ? 'owner' : 'lead'}, at the desk`
    : hasPin
      ? roles.join(', ')
      : 'no PIN yet',
});

interface Signer {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly hasPin: boolean;
}

/** Those of the bench first, each by name. */
const readSigners = async (db: Database): Promise<readonly Signer[]> => {
  const found = await db.$queryRaw<Signer[]>`
    SELECT p.id, p.name, p.row -> 'roles' AS roles, coalesce(c.pin_hash IS NOT NULL, false) AS "hasPin"
    FROM person p LEFT JOIN credential c ON c.person = p.id
    WHERE NOT p."left" ORDER BY p.name LIMIT 200`;
  const isOfDesk = ({ roles }: Signer): number => Number(needsPassword(roles));
  return [...found].sort((a, b) => isOfDesk(a) - isOfDesk(b));
};
