/** Which shop a foreign database holds, and filling it where it holds none. */
import { fillStep, migrateStep, withDatabase } from './shop-database';
import type { MakeFilling } from './shop-database';
import { prepareForeign, servingAddress } from './foreign-database';
import type { ForeignDatabase } from './foreign-database';
import { step } from './progress';
import { withClient } from './roles';
import { StartTrouble } from './trouble';

/** A note on the table itself while it is being filled: here nothing can be made aside and renamed. */
const HALF = 'slipmark: being filled';

const mark = (url: string, text: string | null): Promise<void> =>
  withClient(url, async (client) => {
    await client.query(`COMMENT ON TABLE shop_setting IS ${text === null ? 'NULL' : `'${text}'`}`);
  });

const isHalfFilled = (url: string): Promise<boolean> =>
  withClient(url, async (client) => {
    const { rows } = await client.query<{ says: string | null }>(
      "SELECT obj_description('shop_setting'::regclass, 'pg_class') AS says",
    );
    return rows[0]?.says === HALF;
  });

/** Answers its address as the server connects, and whether it is the demo. */
export const openForeignShop = async (
  root: string,
  foreign: ForeignDatabase,
  isOwn: boolean,
  filling: MakeFilling,
): Promise<{ readonly url: string; readonly isDemo: boolean }> => {
  await step('database', async ({ note }) => {
    await prepareForeign(foreign);
    note('as DATABASE_URL says');
  });
  await migrateStep(root, foreign.ownerUrl);
  const { url, says } = await servingAddress(foreign);
  if (says !== null) process.stdout.write(`    ${says}\n`);
  const shop = await withDatabase(url, (db) => db.shopSetting.findUnique({ where: { id: 1 } }));
  if (isOwn && shop?.demo === true)
    throw new StartTrouble('This database holds the demo shop. Give a shop of your own another database.');
  // Filling goes on where it was cut off.
  if (shop !== null && !(await isHalfFilled(foreign.ownerUrl))) return { url, isDemo: shop.demo };
  await mark(foreign.ownerUrl, HALF);
  await fillStep(url, filling);
  await mark(foreign.ownerUrl, null);
  return { url, isDemo: !isOwn };
};
