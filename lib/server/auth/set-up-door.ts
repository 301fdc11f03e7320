/** The way into the set-up's own posts: who may, and what was sent, before anything is done. */
import 'server-only';
import type { z } from 'zod';
import { SET_UP_STATUS } from '@/lib/wire/set-up';
import type { SetUpRefused } from '@/lib/wire/set-up';
import { strictJson } from '@/lib/wire/strict-json';
import { limitedBody } from './limited-body';
import { hasRole, presentOrNull } from './session';
import type { Present } from './session';

export const setUpRefused = (answer: SetUpRefused): Response =>
  Response.json(answer, { status: SET_UP_STATUS[answer.outcome] });

/** Does the work for a lead or an owner who sent what the schema wants; answers everybody else. */
export const forLeads = async <Shape extends z.ZodType>(
  request: Request,
  schema: Shape,
  mostBytes: number,
  work: (input: z.output<Shape>, who: Present) => Promise<Response>,
): Promise<Response> => {
  const who = await presentOrNull();
  if (who === null)
    return setUpRefused({
      outcome: 'not-signed-in',
      says: 'Nobody is signed in here. Sign in and do it again.',
    });
  if (!hasRole(who, ['lead', 'owner']))
    return setUpRefused({ outcome: 'not-allowed', says: 'Setting up the shop is for a lead or an owner.' });
  if (request.headers.get('content-type')?.split(';')[0]?.trim() !== 'application/json')
    return setUpRefused({ outcome: 'bad-input', says: 'This is sent as application/json.' });
  const body = await limitedBody(request, mostBytes);
  if (body === null)
    return setUpRefused({
      outcome: 'bad-input',
      says: `This is longer than ${String(Math.round(mostBytes / 1000))} kB, or no text in UTF-8.`,
    });
  const json = strictJson(body);
  if (!json.ok) return setUpRefused({ outcome: 'bad-input', says: json.error });
  const read = schema.safeParse(json.value);
  return read.success
    ? work(read.data, who)
    : setUpRefused({
        outcome: 'bad-input',
        says: read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; '),
      });
};
