/** Offers and items as files, for a lead or an owner: there are prices in one of them. */
import { hasRole, presentOrNull } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { answerToTrouble } from '@/lib/server/door';
import { itemClaims, offerClaims } from '@/lib/server/queries/suppliers';
import { writeItemsFile, writeOffersFile } from '@/lib/wire/supply-files';

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
      return refused('not-allowed', 'Suppliers and their prices are for a lead or an owner.', 403);
    const { file } = await params;
    const db = database();
    const text =
      file === 'offers.csv'
        ? writeOffersFile(await offerClaims(db))
        : file === 'items.csv'
          ? writeItemsFile(await itemClaims(db))
          : null;
    if (text === null) return refused('not-found', 'There is no such file here.', 404);
    return new Response(text, {
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
