/** The shop's tablets: which there are, when each was last in touch, and who is on it. */
import 'server-only';
import type { Person } from '@/lib/domain/shop/rows';
import { deviceOf } from '@/lib/server/auth/tablets';
import type { Database } from '@/lib/server/database';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { shopDay } from '@/lib/wire/shop-day';
import type { SetUpTablet, TabletsView } from '@/lib/wire/views/set-up';
import { whenWords } from '@/lib/wire/views/when';

interface Row {
  readonly device: string;
  readonly name: string;
  readonly minutes: number;
  readonly enrolledAt: Date;
  readonly enrolledBy: string;
  readonly revokedAt: Date | null;
  readonly revokedBy: string | null;
  readonly seenAt: Date | null;
  readonly who: string | null;
}

export const tabletsView = async (db: Database, who: Person, device: string | null): Promise<TabletsView> => {
  const [shop, { zone }, here, rows] = await Promise.all([
    loadShop(db),
    shopSetting(db),
    deviceOf(db, device),
    readTablets(db),
  ]);
  const when = whenWords(zone, shopDay(zone)(new Date().toISOString()));
  return {
    tablets: rows.map((row) => tabletOf(row, device, when)),
    here: here.standing,
    hereName: here.name,
    mayEnrol: who.roles.includes('owner'),
    owners: Object.values(shop.people)
      .filter(({ left, roles }) => !left && roles.includes('owner'))
      .map(({ name }) => name),
  };
};

const tabletOf = (row: Row, device: string | null, when: (at: string) => string): SetUpTablet => {
  const seen = row.seenAt === null ? 'not in touch yet' : `last in touch ${when(row.seenAt.toISOString())}`;
  return {
    device: row.device,
    name: row.name,
    says: `enrolled by ${row.enrolledBy}, ${when(row.enrolledAt.toISOString())}; ${seen}`,
    who: row.who,
    minutes: row.minutes,
    isThis: row.device === device,
    revoked:
      row.revokedAt === null
        ? null
        : `by ${row.revokedBy ?? 'somebody'}, ${when(row.revokedAt.toISOString())}`,
  };
};

const MOST = 100;

const readTablets = (db: Database): Promise<Row[]> => db.$queryRaw<Row[]>`
  SELECT d.id AS device, d.name, d.lock_minutes AS minutes, d.enrolled_at AS "enrolledAt", e.name AS "enrolledBy",
    d.revoked_at AS "revokedAt", r.name AS "revokedBy",
    (SELECT max(greatest(last_seen_at, active_at)) FROM session s WHERE s.device = d.id) AS "seenAt",
    (SELECT p.name FROM session s JOIN person p ON p.id = s.person
      WHERE s.device = d.id AND s.ended_at IS NULL AND s.made_at > now() - interval '12 hours'
      ORDER BY s.made_at DESC LIMIT 1) AS who
  FROM device d JOIN person e ON e.id = d.enrolled_by LEFT JOIN person r ON r.id = d.revoked_by
  ORDER BY d.revoked_at IS NOT NULL, d.name LIMIT ${MOST}`;
