/** Where the shop's database is, for commands that look into it: DATABASE_URL, else the one that `npm start` runs. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { superUrl } from './starting/cluster';
import { placeFor } from './starting/place';
import { runningPostmaster } from './starting/postmaster';
import { hasDatabase, urlAs } from './starting/roles';
import { secretsIn } from './starting/secrets';
import type { Secrets } from './starting/secrets';

/** Not a fault of the program: `message` says what to do. */
export class ShopClosed extends Error {
  override readonly name = 'ShopClosed';
}

export interface OwnServer {
  readonly superUrl: string;
  readonly secrets: Secrets;
}

/** Our own cluster, while somebody runs it. */
export const runningServer = (root: string): OwnServer => {
  const secretsFile = join(root, '.data', 'secrets.json');
  const closed = new ShopClosed(
    'The shop is closed: open it with `npm start` in another terminal, or give DATABASE_URL.',
  );
  if (!existsSync(secretsFile)) throw closed;
  const place = placeFor(root);
  const found = runningPostmaster(place.folder);
  if (found === null) throw closed;
  const secrets = secretsIn(secretsFile, false);
  const cluster = { ...place, log: '', password: secrets.superuser };
  return { superUrl: superUrl(cluster, found.port), secrets };
};

const SHOPS = ['slipmark_demo', 'slipmark_own'] as const;

/** As the server connects. `own`: the shop of one's own, where the demo is there too; else whichever is there. */
export const shopAddress = async (root: string, own: boolean): Promise<string> => {
  const given = process.env.DATABASE_URL;
  if (given !== undefined && given !== '') return given;
  const { superUrl: address, secrets } = runningServer(root);
  for (const shop of SHOPS.slice(own ? 1 : 0))
    if (await hasDatabase(address, shop)) return urlAs(address, 'app', secrets, shop);
  throw new ShopClosed(
    own
      ? 'There is no shop of your own here yet: begin it with `npm start -- --own`.'
      : 'There is no shop here yet: `npm start` makes one.',
  );
};
