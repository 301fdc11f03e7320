/** Covers a screen, opens it again for who was there, or lets somebody else take over. */
import { encode } from 'next-auth/jwt';
import { cookies } from 'next/headers';
import { z } from 'zod';
import { SESSION_SECONDS, cookieKeeping, deviceCookie, sessionCookie } from '@/lib/server/auth/cookies';
import { limitedBody } from '@/lib/server/auth/limited-body';
import { atTheLock } from '@/lib/server/auth/lock';
import { seatEvenLocked } from '@/lib/server/auth/session';
import { authSecret } from '@/lib/server/auth/setting';
import { database } from '@/lib/server/database';
import { idSchema } from '@/lib/wire/claim-words';
import { LOCK_STATUS } from '@/lib/wire/lock';
import type { LockAnswer } from '@/lib/wire/lock';
import { strictJson } from '@/lib/wire/strict-json';

export const dynamic = 'force-dynamic';

const pin = z.string().regex(/^\d{6}$/, 'must be six figures');
const schema = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('here') }),
  z.strictObject({ act: z.literal('lock') }),
  z.strictObject({ act: z.literal('unlock'), pin }),
  z.strictObject({ act: z.literal('take-over'), person: idSchema, pin }),
]);

const say = (answer: LockAnswer): Response => Response.json(answer, { status: LOCK_STATUS[answer.outcome] });

export const POST = async (request: Request): Promise<Response> => {
  const seat = await seatEvenLocked();
  if (seat === null)
    return say({ outcome: 'not-signed-in', says: 'The session here has ended. Sign in again.' });
  const body = await limitedBody(request, 1024);
  const json = body === null ? null : strictJson(body);
  const read = schema.safeParse(json?.ok === true ? json.value : null);
  if (!read.success) return say({ outcome: 'bad-input', says: 'This says nothing that a lock knows.' });
  const jar = await cookies();
  const deviceToken = jar.get(deviceCookie())?.value ?? null;
  const { answer, session } = await atTheLock(database(), read.data, seat, deviceToken);
  if (session !== null)
    jar.set(
      sessionCookie(),
      await encode({ token: { session }, secret: authSecret(), maxAge: SESSION_SECONDS }),
      { ...cookieKeeping(), maxAge: SESSION_SECONDS },
    );
  return say(answer);
};
