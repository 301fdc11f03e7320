/** The demo shop behind its doors, with what the tests of the doors need of it. */
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { DEMO_SIGN_INS } from '@/seed/demo-shop';
import { openShop } from '@/tests/support/browser-server';
import type { OpenedShop } from '@/tests/support/browser-server';
import { Client } from './doors-client';

export const FORM = 'application/x-www-form-urlencoded';

export const secretsOf = (person: string): { readonly password: string; readonly pin: string } => {
  const found = DEMO_SIGN_INS.find((each) => each.person === person);
  if (found === undefined) throw new Error(`nobody called ${person}`);
  return found;
};

interface Given {
  readonly command: { readonly id: string; readonly doneAt: string; readonly claim: object };
}

export const given = (claim: object, more: object = {}): Given => ({
  command: { id: randomUUID(), doneAt: new Date(Date.now() - 1000).toISOString(), claim },
  ...more,
});

let people = 0;

/** A claim that a lead may make, another each time. */
export const somebody = (): object => ({
  type: 'add-person',
  person: `door-${String((people += 1))}`,
  name: 'Door Person',
  roles: ['technician'],
});

export interface Doors {
  readonly shop: OpenedShop;
  /** Above all rules: to look and to clear up. */
  readonly above: pg.Client;
  readonly client: () => Client;
  readonly signedIn: (person: string) => Promise<Client>;
  readonly count: (from: string, ...values: readonly string[]) => Promise<number>;
  readonly close: () => Promise<void>;
}

export const openDoors = async (): Promise<Doors> => {
  const shop = await openShop();
  const above = new pg.Client({ connectionString: shop.database.superUrl });
  await above.connect();
  return {
    shop,
    above,
    client: () => new Client(shop.address),
    signedIn: async (person) => {
      const client = new Client(shop.address);
      const isDesk = person === 'ada' || person === 'mara';
      const { password, pin } = secretsOf(person);
      const to = await client.signIn(isDesk ? 'desk' : 'bench', person, isDesk ? password : pin);
      if (to !== '/board') throw new Error(`${person} could not sign in: ${to}`);
      return client;
    },
    count: async (from, ...values) =>
      Number((await above.query<{ n: string }>(`SELECT count(*) AS n FROM ${from}`, [...values])).rows[0]?.n),
    close: async () => {
      await above.end();
      await shop.close();
    },
  };
};
