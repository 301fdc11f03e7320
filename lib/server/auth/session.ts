/** Who is asking, from the cookie of the request, for pages and routes. Asked of Postgres at each request. */
import 'server-only';
import { decode } from 'next-auth/jwt';
import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import type { Role } from '@/lib/domain/base/vocabulary';
import type { Person } from '@/lib/domain/shop/rows';
import { database } from '@/lib/server/database';
import { sessionCookie } from './cookies';
import { PATH_HEADER } from './passed-headers';
import { seatOf } from './session-row';
import type { Seat } from './session-row';
import { authSecret } from './setting';

export interface Present {
  readonly person: Person;
  readonly device: string | null;
  readonly session: string;
}

/** The token in the sealed cookie; null for whatever was not sealed by us, or is too old. */
export const tokenIn = async (cookie: string | undefined): Promise<string | null> => {
  if (cookie === undefined) return null;
  try {
    const held = await decode({ token: cookie, secret: authSecret() });
    return typeof held?.['session'] === 'string' ? held['session'] : null;
  } catch {
    // Cut off, made up, sealed with another key, or out of time: all of these are simply nobody.
    return null;
  }
};

/** The session of this request, its screen covered or not: for the lock, and for ending it. */
export const seatEvenLocked = cache(async (): Promise<Seat | null> => {
  const token = await tokenIn((await cookies()).get(sessionCookie())?.value);
  return token === null ? null : seatOf(database(), token);
});

/** The session of this request with what the command door needs of its device. While it is locked nobody is there. */
export const seat = async (): Promise<Seat | null> => {
  const found = await seatEvenLocked();
  return found === null || found.isLocked ? null : found;
};

export const presentOrNull = async (): Promise<Present | null> => {
  const found = await seat();
  return found === null ? null : { person: found.person, device: found.device, session: found.session };
};

/**
 * For pages: whoever is signed in. Sends everybody else to sign in, and back to this page after it; whose screen is
 * locked, to the lock.
 */
export const present = async (): Promise<Present> => {
  const who = await presentOrNull();
  if (who !== null) return who;
  const path = (await headers()).get(PATH_HEADER) ?? '/';
  if ((await seatEvenLocked()) !== null) redirect(`/locked?to=${encodeURIComponent(path)}`);
  redirect(`/sign-in?to=${encodeURIComponent(path)}`);
};

export const hasRole = ({ person }: Present, roles: readonly Role[]): boolean =>
  person.roles.some((role) => roles.includes(role));
