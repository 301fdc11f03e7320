/** The command door: every act from every screen comes in here (D6). */
import { hasRole, seatEvenLocked } from '@/lib/server/auth/session';
import { limitedBody } from '@/lib/server/auth/limited-body';
import { database } from '@/lib/server/database';
import { answerTo, answerToTrouble, answerWhileLocked } from '@/lib/server/door';
import { DOOR_STATUS } from '@/lib/wire/door';
import type { DoorAnswer } from '@/lib/wire/door';
import { readDoorRequest } from '@/lib/wire/door-schema';

export const dynamic = 'force-dynamic';

const MOST_BYTES = 65_536;
/** Files of items and offers are commands too, and only theirs. */
const MOST_OF_LEADS = 1_000_000;

const say = (answer: DoorAnswer, status = DOOR_STATUS[answer.outcome]): Response =>
  Response.json(answer, { status, ...(status === 503 ? { headers: { 'retry-after': '1' } } : {}) });

const badInput = (field: string, says: string, status: number): Response =>
  say({ outcome: 'bad-input', fields: [{ field, says }] }, status);

export const POST = async (request: Request): Promise<Response> => {
  let command = '';
  try {
    const who = await seatEvenLocked();
    if (who === null)
      return say({ outcome: 'not-signed-in', says: 'Nobody is signed in here. Sign in and do it again.' });
    if (request.headers.get('content-type')?.split(';')[0]?.trim() !== 'application/json')
      return badInput('', 'A command is sent as application/json.', 415);
    const most = hasRole(who, ['lead', 'owner']) ? MOST_OF_LEADS : MOST_BYTES;
    const body = await limitedBody(request, most);
    if (body === null)
      return badInput(
        '',
        `This is longer than ${String(Math.floor(most / 1000))} kB, or no text in UTF-8. No command is.`,
        413,
      );
    const read = readDoorRequest(body, who.zone);
    if (!read.ok) return say({ outcome: 'bad-input', fields: read.error });
    command = read.value.command.id;
    return say(await (who.isLocked ? answerWhileLocked : answerTo)(database(), read.value, who));
  } catch (error) {
    const { answer, status } = answerToTrouble(error, command);
    return say(answer, status);
  }
};
