/** An approved order as a file, for a lead or an owner: there are prices in it. */
import { hasRole, presentOrNull } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { answerToTrouble } from '@/lib/server/door';
import { purchaseRows } from '@/lib/server/queries/purchases';
import { writeCsv } from '@/lib/wire/csv';

export const dynamic = 'force-dynamic';

const HEADERS = { 'cache-control': 'private, no-store' };

const refused = (outcome: string, says: string, status: number): Response =>
  Response.json({ outcome, says }, { status, headers: HEADERS });

interface Asked {
  readonly params: Promise<{ readonly file: string }>;
}

export const GET = async (_request: Request, { params }: Asked): Promise<Response> => {
  try {
    const who = await presentOrNull();
    if (who === null)
      return refused('not-signed-in', 'Nobody is signed in here, or the screen is locked.', 401);
    if (!hasRole(who, ['lead', 'owner']))
      return refused('not-allowed', 'Orders and their prices are for a lead or an owner.', 403);
    const { file } = await params;
    const [, id] = /^(\d{1,9})\.csv$/u.exec(file) ?? [];
    const rows = id === undefined ? null : await purchaseRows(database(), id);
    if (rows === null) return refused('not-found', 'There is no such order here.', 404);
    return new Response(writeCsv(rows), {
      headers: {
        ...HEADERS,
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': `attachment; filename="order-${file}"`,
      },
    });
  } catch (error) {
    const { answer, status } = answerToTrouble(error, 'file');
    return Response.json(answer, { status, headers: HEADERS });
  }
};
