/** A shop of one's own: an empty one with one owner, and the link by which that owner comes in. */
import { createInterface } from 'node:readline/promises';
import { ROLES } from '@/lib/domain/base/vocabulary';
import { makeEnrolment } from '@/lib/server/auth/enrolment';
import type { Database } from '@/lib/server/database';
import { newShop, UNNAMED } from '@/lib/server/new-shop';
import type { HandedOver } from './handed-over';
import type { Filling } from './shop-database';
import { StartTrouble } from './trouble';

export interface Names {
  readonly shop: string;
  readonly owner: string;
}

const OWNER = 'Owner';

/** Asked only where somebody sits, and before the work begins; elsewhere the flags say it, or these plain words do. */
export const askNames = async ({ shopName, ownerName }: HandedOver): Promise<Names> => {
  if (!process.stdin.isTTY) return { shop: shopName ?? UNNAMED, owner: ownerName ?? OWNER };
  // Not as a terminal: that would take the Ctrl-C for itself.
  const terminal = createInterface({ input: process.stdin, output: process.stdout, terminal: false });
  const ask = async (question: string, otherwise: string): Promise<string> =>
    (await terminal.question(`${question} [${otherwise}] `)).trim() || otherwise;
  try {
    const shop = shopName ?? (await ask('What is your shop called?', UNNAMED));
    return { shop, owner: ownerName ?? (await ask('And who owns it?', OWNER)) };
  } finally {
    terminal.close();
  }
};

/** A short word of the name, as people's ids are: `Ada Quern` is `ada`. */
const idOf = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .find((word) => word !== '') ?? 'owner';

export const ownFilling = (names: Names, zone: string): Filling => ({
  label: 'your shop',
  fill: async (db, { note }) => {
    // Whoever begins a shop alone moves its cars on and works on them too.
    const owner = { id: idOf(names.owner), name: names.owner, roles: ROLES };
    const opened = await newShop(db, { name: names.shop, zone, owner }, new Date().toISOString());
    if (!opened.opened) throw new StartTrouble(`No shop could be opened: ${opened.says}.`);
    note(`${names.shop}, ${zone}`);
  },
});

/**
 * As long as no owner has a password, each start makes a new link for the first of them: the one printed before may be
 * lost or too old. Afterwards it is the owner's to let people in.
 */
export const ownerLink = async (
  db: Database,
  address: string,
): Promise<{ readonly name: string; readonly link: string } | null> => {
  const people = await db.person.findMany({ where: { left: false }, orderBy: { id: 'asc' } });
  const owners = people.filter(({ row }) => (row as { roles: string[] }).roles.includes('owner'));
  const known = await db.credential.count({
    where: { person: { in: owners.map((one) => one.id) }, passwordHash: { not: null } },
  });
  const [first] = owners;
  if (known > 0 || first === undefined) return null;
  const { token } = await makeEnrolment(db, { person: first.id, by: null });
  return { name: first.name, link: `${address}/set-up/enrol?token=${encodeURIComponent(token)}` };
};
