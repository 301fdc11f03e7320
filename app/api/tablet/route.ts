/** Takes the code that an owner made, from the tablet it was typed on. Answers with where to go. */
import { cookies } from 'next/headers';
import { deviceCookie } from '@/lib/server/auth/cookies';
import { limitedBody } from '@/lib/server/auth/limited-body';
import { ownOrigin } from '@/lib/server/auth/setting';
import { enrolByCode } from '@/lib/server/auth/tablets';
import { database } from '@/lib/server/database';

export const dynamic = 'force-dynamic';

export const POST = async (request: Request): Promise<Response> => {
  const body = await limitedBody(request, 1024);
  const code = body === null ? '' : (new URLSearchParams(body).get('code') ?? '').slice(0, 100);
  const device = (await cookies()).get(deviceCookie())?.value;
  const name = device === undefined ? null : await enrolByCode(database(), code, device);
  const to = name === null ? '/tablet?says=wrong' : '/sign-in?at=bench&says=tablet';
  return new Response(null, { status: 303, headers: { location: `${ownOrigin()}${to}` } });
};
