/** The list for a stocktake as a file: every place with what the books have. For everybody, since it shows no price. */
import { presentOrNull } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { answerToTrouble } from '@/lib/server/door';
import { countRows } from '@/lib/server/queries/stock';
import { writeCountFile } from '@/lib/wire/count-file';

export const dynamic = 'force-dynamic';

const HEADERS = { 'cache-control': 'private, no-store' };

const refused = (outcome: string, says: string, status: number): Response =>
  Response.json({ outcome, says }, { status, headers: HEADERS });

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  try {
    if ((await presentOrNull()) === null)
      return refused('not-signed-in', 'Nobody is signed in here, or the screen is locked.', 401);
    const { file } = await params;
    if (file !== 'counts.csv') return refused('not-found', 'There is no such file here.', 404);
    return new Response(writeCountFile(await countRows(database(), new Date().toISOString())), {
      headers: {
        ...HEADERS,
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': `attachment; filename="${file}"`,
      },
    });
  } catch (error) {
    const { answer, status } = answerToTrouble(error, 'file');
    return Response.json(answer, { status, headers: HEADERS });
  }
};
