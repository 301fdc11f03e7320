// What may be said behind `npm start --`. Plain Node: a wrong word should not first cost a minute of installing.
import { parseArgs } from 'node:util';

const USAGE = `npm start                     the demo shop, on http://127.0.0.1:3000
npm start -- --own            a shop of your own: empty, with one owner
npm start -- --port 3100      another port (or PORT=3100 npm start)

With --own, the first time:
  --shop-name "Name"          what it is called
  --owner-name "Name"         who owns it
  --zone Europe/London        its time zone; else this machine's

Environment:
  PORT                        the port
  NEXTAUTH_URL                the address that people type, where it is another one
  DATABASE_URL                a Postgres of your own (15 or newer) instead of the one under .data
  NEXTAUTH_SECRET             signs the sessions; needed with DATABASE_URL, else made and kept in .data
  MIGRATIONS_DATABASE_URL     with DATABASE_URL: the same database as its owner, for making tables
`;

const OPTIONS = {
  help: { type: 'boolean', short: 'h' },
  own: { type: 'boolean', default: false },
  port: { type: 'string' },
  'shop-name': { type: 'string' },
  'owner-name': { type: 'string' },
  zone: { type: 'string' },
};

const portOf = (said) => {
  const port = Number(said);
  if (!/^\d+$/.test(said) || port < 1 || port > 65_535)
    throw new Error(`${said} is no port: give a number from 1 to 65535.`);
  return port;
};

const zoneOf = (said) => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: said }).resolvedOptions().timeZone;
  } catch {
    throw new Error(`${said} is no time zone: give a name like Europe/London or America/Chicago.`);
  }
};

/** { options } to start with, or { says, exit }: what to print instead, and how to end. */
export const readOptions = (words, environment) => {
  try {
    const { values } = parseArgs({ args: words, options: OPTIONS });
    if (values.help) return { says: USAGE, exit: 0 };
    return {
      options: {
        own: values.own,
        port: portOf(values.port ?? (environment.PORT || '3000')),
        shopName: values['shop-name'] ?? null,
        ownerName: values['owner-name'] ?? null,
        zone: zoneOf(values.zone),
      },
    };
  } catch (error) {
    return { says: `${error.message}\n\n${USAGE}`, exit: 2 };
  }
};
