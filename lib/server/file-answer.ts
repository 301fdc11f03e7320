/** A file of comma-separated values as an answer: made only for somebody who may have it, kept by no browser. */
import 'server-only';
import { hasRole, presentOrNull } from './auth/session';
import { answerToTrouble } from './door';

interface FileFor {
  /** Why it is for leads and owners alone; null: for whoever is signed in. */
  readonly leadsOnly: string | null;
  /** What is said where there is no such file. */
  readonly missing: string;
  /** What it is called where it is saved. */
  readonly name: string;
}

const HEADERS = { 'cache-control': 'private, no-store' };

const refused = (outcome: string, says: string, status: number): Response =>
  Response.json({ outcome, says }, { status, headers: HEADERS });

/** `text` gives the file, or null where there is none of that name. */
export const fileAnswer = async (
  { leadsOnly, missing, name }: FileFor,
  text: () => Promise<string | null>,
): Promise<Response> => {
  try {
    const who = await presentOrNull();
    if (who === null)
      return refused('not-signed-in', 'Nobody is signed in here, or the screen is locked.', 401);
    if (leadsOnly !== null && !hasRole(who, ['lead', 'owner'])) return refused('not-allowed', leadsOnly, 403);
    const found = await text();
    if (found === null) return refused('not-found', missing, 404);
    return new Response(found, {
      headers: {
        ...HEADERS,
        'content-type': 'text/csv; charset=utf-8; header=present',
        'content-disposition': `attachment; filename="${name}"`,
      },
    });
  } catch (error) {
    const { answer, status } = answerToTrouble(error, 'file');
    return Response.json(answer, { status, headers: HEADERS });
  }
};
