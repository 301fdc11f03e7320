/**
 * Passwords and PINs as argon2id hashes. One takes some 12 ms of a core, which is the point: so it is never done while
 * a transaction is open (D37), and no more at once than a small machine bears.
 */
import 'server-only';
import { hash, verify } from '@node-rs/argon2';
import { randomBytes } from 'node:crypto';

const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** At 12 ms each, whoever comes after these would wait for seconds. */
const MOST_WAITING = 128;
let waiting = 0;

/** Too many at once: nothing was looked at. */
export class TooBusy extends Error {
  override readonly name = 'TooBusy';
}

const counted = async <Value>(work: () => Promise<Value>): Promise<Value> => {
  if (waiting >= MOST_WAITING) throw new TooBusy('too many passwords and PINs at once');
  waiting += 1;
  try {
    return await work();
  } finally {
    waiting -= 1;
  }
};

/** The same letters may come as different bytes from different keyboards; NFKC makes them one. */
const bytesOf = (secret: string): string => secret.normalize('NFKC');

export const hashSecret = (secret: string): Promise<string> => counted(() => hash(bytesOf(secret), COST));

let nobodys: Promise<string> | null = null;

/** Where there is nothing to compare with, it takes as long all the same, so that the time tells nothing. */
export const isSecretOf = async (stored: string | null, secret: string): Promise<boolean> => {
  nobodys ??= hash(randomBytes(32), COST);
  const against = stored ?? (await nobodys);
  const fits = await counted(() => verify(against, bytesOf(secret)));
  return fits && stored !== null;
};
