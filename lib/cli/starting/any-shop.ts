/** The shop that is to be served, wherever its database is, and what to say once it is open. */
import { demoFilling, demoSignIns } from './demo-shop';
import type { ForeignDatabase } from './foreign-database';
import { openForeignShop } from './foreign-shop';
import type { HandedOver } from './handed-over';
import { askNames, ownerLink, ownFilling } from './own-shop';
import { openOwnCluster } from './own-cluster';
import type { OwnCluster } from './own-cluster';
import { step } from './progress';
import { hasDatabase } from './roles';
import { openShopDatabase, withDatabase } from './shop-database';
import type { Filling } from './shop-database';

export interface OpenShop {
  /** As the server connects. */
  readonly url: string;
  /** Null: not ours to look after. */
  readonly cluster: OwnCluster | null;
  readonly greeting: (address: string) => Promise<readonly string[]>;
}

const fillingFor = async (given: HandedOver, isThere: boolean): Promise<Filling> => {
  if (!given.own) return demoFilling(given.root);
  const names = isThere ? { shop: '', owner: '' } : await askNames(given);
  return ownFilling(names, given.zone);
};

const greetOwner =
  (url: string) =>
  async (address: string): Promise<readonly string[]> => {
    const found = await withDatabase(url, (db) => ownerLink(db, address));
    if (found === null) return [];
    return [
      `${found.name} has no password yet. This link sets one, once; it is for the owner's eyes only:`,
      found.link,
    ];
  };

export const openAnyShop = async (given: HandedOver, foreign: ForeignDatabase | null): Promise<OpenShop> => {
  if (foreign !== null) {
    const filling = await fillingFor(given, false);
    const { url, isDemo } = await openForeignShop(given.root, foreign, given.own, filling);
    return { url, cluster: null, greeting: isDemo ? () => demoSignIns(given.root) : greetOwner(url) };
  }
  const cluster = await step('database', (noting) => openOwnCluster(given.root, noting));
  const name = given.own ? 'slipmark_own' : 'slipmark_demo';
  const filling = await fillingFor(given, await hasDatabase(cluster.url, name));
  const url = await openShopDatabase(given.root, cluster.url, cluster.secrets, name, filling);
  return { url, cluster, greeting: given.own ? greetOwner(url) : () => demoSignIns(given.root) };
};
