/** The copy of a photograph, for whoever is signed in. Under its name it never changes. */
import { presentOrNull } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { answerToTrouble } from '@/lib/server/door';
import { photoCopy } from '@/lib/server/photos/keep';
import { sha256Schema } from '@/lib/wire/photo-schema';
import { PHOTO_STATUS } from '@/lib/wire/photos';
import type { PhotoAnswer } from '@/lib/wire/photos';

export const dynamic = 'force-dynamic';

const say = (answer: PhotoAnswer, status = PHOTO_STATUS[answer.outcome]): Response =>
  Response.json(answer, { status, headers: { 'cache-control': 'private, no-store' } });

interface Asked {
  readonly params: Promise<{ readonly hash: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  try {
    if ((await presentOrNull()) === null)
      return say({ outcome: 'not-signed-in', says: 'Nobody is signed in here, or the screen is locked.' });
    const { hash } = await params;
    const copy = sha256Schema.safeParse(hash).success ? await photoCopy(database(), hash) : null;
    if (copy === null) return say({ outcome: 'not-found', says: 'There is no such photograph here.' });
    return new Response(copy, {
      headers: {
        'content-type': 'image/jpeg',
        'content-disposition': `inline; filename="${hash.slice(0, 12)}.jpg"`,
        // With the session's cookie gone, what the browser kept is not shown either.
        'cache-control': 'private, max-age=31536000, immutable',
        vary: 'cookie',
      },
    });
  } catch (error) {
    const { answer, status } = answerToTrouble(error, 'photograph');
    return Response.json(answer, { status, headers: { 'cache-control': 'private, no-store' } });
  }
};
