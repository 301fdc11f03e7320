/** `slipmark shop new`: an empty shop with one owner, in our own running cluster or at DATABASE_URL. */
import { shopSetting } from '@/lib/server/load/shop';
import type { Answer } from './answer';
import { runningServer } from './shop-address';
import { openForeignShop } from './starting/foreign-shop';
import { ownerLink, ownFilling } from './starting/own-shop';
import { openShopDatabase, withDatabase } from './starting/shop-database';
import type { MakeFilling } from './starting/shop-database';

export interface NewShopOptions {
  readonly name: string;
  readonly owner: string;
  readonly zone: string;
  /** Where the shop's pages will be served, for the owner's link. */
  readonly address: string;
}

/** Where it is, as the server connects; filled only where there was no shop yet. */
const opened = async (root: string, filling: MakeFilling): Promise<string> => {
  const given = process.env.DATABASE_URL;
  if (given !== undefined && given !== '') {
    const foreign = { url: given, ownerUrl: process.env.MIGRATIONS_DATABASE_URL || given };
    return (await openForeignShop(root, foreign, true, filling)).url;
  }
  const { superUrl, secrets } = runningServer(root);
  return openShopDatabase(root, superUrl, secrets, 'slipmark_own', filling);
};

export const openNewShop = async (root: string, options: NewShopOptions): Promise<Answer> => {
  const names = { shop: options.name, owner: options.owner };
  const url = await opened(root, () => Promise.resolve(ownFilling(names, options.zone)));
  return withDatabase(url, async (db) => {
    const { name, zone } = await shopSetting(db);
    if (name !== options.name)
      return {
        exit: 1,
        out: [],
        problems: [`No shop was opened: this database holds the shop “${name}” already.`],
      };
    const link = await ownerLink(db, options.address);
    return {
      exit: 0,
      out: [
        `${name} is open, on the calendar of ${zone}.`,
        ...(link === null
          ? ['Its owner has a password already.']
          : [`${link.name} sets a password with this link, once:`, link.link]),
      ],
    };
  });
};
