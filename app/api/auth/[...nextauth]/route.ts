/** next-auth's own routes, as far as they are used: the two doors that a sign-in comes through. Nothing is read here. */
import NextAuth from 'next-auth';
import { cookies } from 'next/headers';
import { NextRequest } from 'next/server';
import { database } from '@/lib/server/database';
import { backCookie, deviceCookie } from '@/lib/server/auth/cookies';
import { limitedBody } from '@/lib/server/auth/limited-body';
import { authOptions } from '@/lib/server/auth/next-auth';
import { seatEvenLocked } from '@/lib/server/auth/session';
import { endSession } from '@/lib/server/auth/session-row';
import { signInAgain } from '@/lib/server/auth/sign-in-again';

interface Context {
  readonly params: Promise<{ nextauth: string[] }>;
}

/** A name, a password of 200 characters and where to go: with every character written as three. */
const MOST_BYTES = 16_384;
const FORM = 'application/x-www-form-urlencoded';

export const POST = async (request: NextRequest, context: Context): Promise<Response> => {
  const [action, door = ''] = (await context.params).nextauth;
  if (action !== 'callback' || (door !== 'desk' && door !== 'bench'))
    return new Response(null, { status: 404 });
  const body = await limitedBody(request, MOST_BYTES);
  if (body === null || request.headers.get('content-type')?.split(';')[0] !== FORM)
    return new Response('This is no sign-in form.', { status: 400 });
  const fields = new URLSearchParams(body);
  const jar = await cookies();
  // It stops at one that is no address; where to go stands in the form anyway.
  jar.delete(backCookie());
  const before = await seatEvenLocked();
  const again = new NextRequest(request.url, { method: 'POST', headers: request.headers, body });
  const answer = (await NextAuth(
    again,
    context,
    authOptions(jar.get(deviceCookie())?.value ?? null),
  )) as Response;
  if (isIn(answer)) {
    // One browser, one session: the one before has nobody in front of it any more.
    if (before !== null) await endSession(database(), before.session);
    return answer;
  }
  return signInAgain(
    door,
    fields,
    new URL(answer.headers.get('location') ?? '/', request.url).searchParams.get('error'),
  );
};

/** Every other way out of next-auth leads to a page of its own that says `error` or asks for the form again. */
const isIn = (answer: Response): boolean => {
  const location = answer.headers.get('location') ?? '';
  return (
    answer.status === 302 && URL.canParse(location) && !new URL(location).pathname.startsWith('/api/auth/')
  );
};
