/** What the sign-in page shows: no more than stands on the wall of the shop anyway. */
import 'server-only';
import type { Role } from '@/lib/domain/base/vocabulary';
import { shopSetting } from '@/lib/server/load/shop';
import type { Database } from '@/lib/server/database';
import { needsPassword } from '@/lib/server/auth/enrolment';
import { restUntil } from '@/lib/server/auth/sign-in';
import type { Door } from '@/lib/server/auth/sign-in';
import { shopTime } from '@/lib/wire/shop-day';
import { initialsOf } from '@/lib/server/queries/board/words';
import type { SignInView } from '@/lib/wire/views/sign-in';

interface Asked {
  readonly door: Door | null;
  readonly name: string | null;
  readonly deviceToken: string | null;
}

export const signInView = async (db: Database, { door, name, deviceToken }: Asked): Promise<SignInView> => {
  const [{ name: shop, zone }, people] = await Promise.all([shopSetting(db), signersIn(db)]);
  const isBenchOpen = people.some(({ roles, hasPin }) => hasPin && !needsPassword(roles));
  const at = door ?? (isBenchOpen ? 'bench' : 'desk');
  const until = name === null ? null : await restUntil(db, at, name, deviceToken);
  return {
    shop,
    at,
    people: people.map(({ id, name: called, roles, hasPin }) => ({
      id,
      name: called,
      initials: initialsOf(called),
      comesBy: needsPassword(roles) ? 'desk' : 'bench',
      says: needsPassword(roles)
        ? `${roles.includes('owner') ? 'owner' : 'lead'}, at the desk`
        : hasPin
          ? roles.join(', ')
          : 'no PIN yet',
    })),
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

interface Signer {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly hasPin: boolean;
}

/** Those of the bench first, each by name. */
const signersIn = async (db: Database): Promise<readonly Signer[]> => {
  const found = await db.$queryRaw<Signer[]>`
    SELECT p.id, p.name, p.row -> 'roles' AS roles, coalesce(c.pin_hash IS NOT NULL, false) AS "hasPin"
    FROM person p LEFT JOIN credential c ON c.person = p.id
    WHERE NOT p."left" ORDER BY p.name LIMIT 200`;
  const isOfDesk = ({ roles }: Signer): number => Number(needsPassword(roles));
  return [...found].sort((a, b) => isOfDesk(a) - isOfDesk(b));
};
