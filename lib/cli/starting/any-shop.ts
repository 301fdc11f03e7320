/** The shop that is to be served, wherever its database is, and what to say once it is open. */
import { demoFilling, demoSignIns } from './demo-shop';
import type { ForeignDatabase } from './foreign-database';
import { openForeignShop } from './foreign-shop';
import type { HandedOver } from './handed-over';
import { openOwnCluster } from './own-cluster';
import type { OwnCluster } from './own-cluster';
import { step } from './progress';
import { openShopDatabase, withDatabase } from './shop-database';
import type { MakeFilling } from './shop-database';

export interface OpenShop {
  /** As the server connects. */
  readonly url: string;
  /** Null: not ours to look after. */
  readonly cluster: OwnCluster | null;
  readonly greeting: (address: string) => Promise<readonly string[]>;
}

const fillingFor =
  (given: HandedOver): MakeFilling =>
  async () => {
    if (!given.own) return demoFilling(given.root);
    const { askNames, ownFilling } = await import('./own-shop');
    return ownFilling(await askNames(given), given.zone);
  };

/** Meant for other databases: PGSSLMODE alone would shut us out of ours. */
const forgetSettings = (): void => {
  for (const name of Object.keys(process.env))
    if (/^PG[A-Z]/.test(name)) Reflect.deleteProperty(process.env, name);
};

const greetOwner =
  (url: string) =>
  async (address: string): Promise<readonly string[]> => {
    const { ownerLink } = await import('./own-shop');
    const found = await withDatabase(url, (db) => ownerLink(db, address));
    if (found === null) return [];
    return [
      `${found.name} has no password yet. This link sets one, once; it is for the owner's eyes only:`,
      found.link,
    ];
  };

export const openAnyShop = async (given: HandedOver, foreign: ForeignDatabase | null): Promise<OpenShop> => {
  if (foreign !== null) {
    const { url, isDemo } = await openForeignShop(given.root, foreign, given.own, fillingFor(given));
    return { url, cluster: null, greeting: isDemo ? () => demoSignIns(given.root) : greetOwner(url) };
  }
  forgetSettings();
  const cluster = await step('database', (noting) => openOwnCluster(given.root, noting));
  const name = given.own ? 'slipmark_own' : 'slipmark_demo';
  const url = await openShopDatabase(given.root, cluster.url, cluster.secrets, name, fillingFor(given));
  return { url, cluster, greeting: given.own ? greetOwner(url) : () => demoSignIns(given.root) };
};
