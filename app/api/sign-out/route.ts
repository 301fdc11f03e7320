/** Ends the session in the database, so that the cookie is worth nothing wherever it was copied to. */
import { cookies } from 'next/headers';
import { database } from '@/lib/server/database';
import { cookieKeeping, sessionCookie } from '@/lib/server/auth/cookies';
import { seatEvenLocked } from '@/lib/server/auth/session';
import { endSession } from '@/lib/server/auth/session-row';
import { ownOrigin } from '@/lib/server/auth/setting';

export const POST = async (): Promise<Response> => {
  const who = await seatEvenLocked();
  if (who !== null) await endSession(database(), who.session);
  (await cookies()).set(sessionCookie(), '', { ...cookieKeeping(), maxAge: 0 });
  return new Response(null, { status: 303, headers: { location: `${ownOrigin()}/sign-in?says=out` } });
};
