/** `slipmark shop new`: an empty shop with one owner, in our own running cluster or at DATABASE_URL. */
import { openDatabase } from '@/lib/server/database';
import { newShop } from '@/lib/server/new-shop';
import { shopSetting } from '@/lib/server/load/shop';
import type { Answer } from './answer';
import { runningServer } from './shop-address';
import { migrate } from './starting/migrate';
import { ownerLink } from './starting/own-shop';
import { hasDatabase, makeDatabase, urlAs } from './starting/roles';

export interface NewShopOptions {
  readonly name: string;
  readonly owner: string;
  readonly zone: string;
  /** Where the shop's pages will be served, for the owner's link. */
  readonly address: string;
}

const OWN = 'slipmark_own';

/** As its owner, for tables, and as the server. */
const addresses = async (root: string): Promise<{ readonly owner: string; readonly app: string }> => {
  const given = process.env.DATABASE_URL;
  if (given !== undefined && given !== '')
    return { owner: process.env.MIGRATIONS_DATABASE_URL ?? given, app: given };
  const { superUrl, secrets } = runningServer(root);
  if (!(await hasDatabase(superUrl, OWN))) await makeDatabase(superUrl, OWN);
  return { owner: urlAs(superUrl, 'owner', secrets, OWN), app: urlAs(superUrl, 'app', secrets, OWN) };
};

export const openNewShop = async (root: string, options: NewShopOptions): Promise<Answer> => {
  const { owner, app } = await addresses(root);
  await migrate(owner, `${root}/prisma/migrations`);
  const db = openDatabase(app, 2);
  try {
    const id =
      options.owner
        .toLowerCase()
        .split(/[^\p{L}\p{N}]+/u)
        .find((word) => word !== '') ?? 'owner';
    const shop = { name: options.name, zone: options.zone, owner: { id, name: options.owner } };
    const opened = await newShop(db, shop, new Date().toISOString());
    if (!opened.opened) return { exit: 1, out: [], problems: [`No shop was opened: ${opened.says}.`] };
    const { name, zone } = await shopSetting(db);
    const link = await ownerLink(db, options.address);
    return {
      exit: 0,
      out: [
        `${name} is open, on the calendar of ${zone}.`,
        ...(link === null
          ? [`${options.owner} has a password already.`]
          : [`${link.name} sets a password with this link, once:`, link.link]),
      ],
    };
  } finally {
    await db.$disconnect();
  }
};
