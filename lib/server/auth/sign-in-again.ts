/** Back to the sign-in page after a try that came to nothing, with what it must say; never with what was typed. */
import 'server-only';
import { ownPath } from './next-auth';
import { ownOrigin } from './setting';
import type { Door } from './sign-in';

/** What the page may have to say. `form`: the page was too old, or cookies are off. */
export const SIGN_IN_SAYS = [
  'wrong',
  'resting',
  'busy',
  'form',
  'out',
  'enrolled',
  'no-tablet',
  'tablet',
] as const;
export type SignInSays = (typeof SIGN_IN_SAYS)[number];

export const signInSays = (given: string | undefined): SignInSays | null =>
  SIGN_IN_SAYS.find((each) => each === given) ?? null;

export const signInAgain = (door: Door, fields: URLSearchParams, error: string | null): Response => {
  const to = new URL('/sign-in', ownOrigin());
  const says = signInSays(error ?? undefined) ?? 'form';
  to.searchParams.set('at', door);
  to.searchParams.set('says', says);
  const name = fields.get('name') ?? '';
  if (name !== '' && name.length <= 100) to.searchParams.set('name', name);
  const back = ownPath(fields.get('callbackUrl'));
  if (back !== '/board') to.searchParams.set('to', back);
  return new Response(null, { status: 303, headers: { location: to.href } });
};
