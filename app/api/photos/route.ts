/** Takes the copy of a photograph, before a command names it. Origin: asked by the proxy, as for every post. */
import { limitedBytes } from '@/lib/server/auth/limited-body';
import { presentOrNull } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { answerToTrouble } from '@/lib/server/door';
import { keepPhoto } from '@/lib/server/photos/keep';
import { photoSentSchema } from '@/lib/wire/photo-schema';
import { MOST_COPY, PHOTO_STATUS } from '@/lib/wire/photos';
import type { PhotoAnswer } from '@/lib/wire/photos';

export const dynamic = 'force-dynamic';

const say = (answer: PhotoAnswer, status = PHOTO_STATUS[answer.outcome]): Response =>
  Response.json(answer, { status, ...(status === 503 ? { headers: { 'retry-after': '1' } } : {}) });

export const POST = async (request: Request): Promise<Response> => {
  try {
    const who = await presentOrNull();
    if (who === null)
      return say({
        outcome: 'not-signed-in',
        says: 'Nobody is signed in here, or the screen is locked. Sign in and send it again.',
      });
    if (request.headers.get('content-type') !== 'image/jpeg')
      return say({ outcome: 'bad-input', says: 'A photograph is sent as image/jpeg.' }, 415);
    const read = photoSentSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
    if (!read.success)
      return say({
        outcome: 'bad-input',
        says: read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; '),
      });
    const copy = await limitedBytes(request, MOST_COPY);
    if (copy === null)
      return say({ outcome: 'too-long', says: 'This is longer than a copy may be, 1.5 MB.' });
    return say(await keepPhoto(database(), read.data, copy, { person: who.person.id, device: who.device }));
  } catch (error) {
    const { status } = answerToTrouble(error, 'photograph');
    return say(
      { outcome: 'busy', says: 'The photograph could not be kept. It is still here; send it again.' },
      status,
    );
  }
};
