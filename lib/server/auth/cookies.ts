/** The cookies, and how a browser must keep them. */
import { isSecure } from './setting';

export interface CookieKeeping {
  readonly httpOnly: true;
  readonly sameSite: 'lax';
  readonly path: '/';
  readonly secure: boolean;
}

/** Lax, not strict: a link to a car in somebody's mail must not ask for the PIN again. */
export const cookieKeeping = (): CookieKeeping => ({
  httpOnly: true,
  sameSite: 'lax',
  path: '/',
  secure: isSecure(),
});

/** `__Host-` keeps other hosts of the same domain from setting it; browsers allow that name over https only. */
const named = (name: string): string => `${isSecure() ? '__Host-' : ''}slipmark.${name}`;

export const sessionCookie = (): string => named('session');
/** Proves that a sign-in was typed into a form of ours. */
export const formCookie = (): string => named('form');
/** Where next-auth keeps the page to go back to. */
export const backCookie = (): string => named('back');
/** Tells one browser from another, for years. */
export const deviceCookie = (): string => named('device');

export const DEVICE_SECONDS = 400 * 24 * 60 * 60;
/** A sign-in lasts one working day. */
export const SESSION_SECONDS = 12 * 60 * 60;
