/** The one way to the database. Everything that waits has a limit, so that a lost server never hangs a page (1.4). */
import 'server-only';
import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from '@/prisma/generated/client';

export type Database = PrismaClient;
/** A client inside a transaction. */
export type Transaction = Parameters<Parameters<PrismaClient['$transaction']>[0]>[0];

/** There are only so many statements; each is parsed once for a connection and then called by its name. */
const names = new Map<string, string>();
const nameOf = ({ sql }: { readonly sql: string }): string => {
  const before = names.get(sql);
  if (before !== undefined) return before;
  const name = `s${String(names.size)}`;
  names.set(sql, name);
  return name;
};

const LIMITS = '-c statement_timeout=10000 -c lock_timeout=8000 -c idle_in_transaction_session_timeout=15000';

/** What the address itself asks of each session stays, and our limits come after it. */
const withLimits = (url: string): { readonly connectionString: string; readonly options: string } => {
  if (!URL.canParse(url)) return { connectionString: url, options: LIMITS };
  const address = new URL(url);
  const asked = address.searchParams.get('options');
  // Left in the address, it would stand instead of ours.
  address.searchParams.delete('options');
  return { connectionString: address.href, options: asked === null ? LIMITS : `${asked} ${LIMITS}` };
};

/** Opens a pool of its own; whoever opens it also calls `$disconnect`. */
export const openDatabase = (url: string, max = 10): Database =>
  new PrismaClient({
    // Its long form looks for the line of ours that asked, at each statement, whether or not one fails.
    errorFormat: 'minimal',
    adapter: new PrismaPg(
      {
        ...withLimits(url),
        max,
        connectionTimeoutMillis: 5000,
        idleTimeoutMillis: 30_000,
      },
      { statementNameGenerator: nameOf },
    ),
  });

const kept = globalThis as { slipmarkDatabase?: Database };

/** This process's pool, by DATABASE_URL. Throws where that is not set: nothing is invented. */
export const database = (): Database => {
  const url = process.env.DATABASE_URL;
  if (url === undefined || url === '')
    throw new Error('DATABASE_URL is not set: start the shop with `npm start`, or give the address.');
  // Kept on globalThis: a development server loads this module anew after each edit, and pools would pile up.
  return (kept.slipmarkDatabase ??= openDatabase(url));
};
