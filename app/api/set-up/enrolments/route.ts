/** A link with which one person sets their own password and PIN. Whoever makes it stands beside it in the books. */
import { z } from 'zod';
import { makeEnrolment, mayEnrol } from '@/lib/server/auth/enrolment';
import { ownOrigin } from '@/lib/server/auth/setting';
import { forLeads, setUpRefused } from '@/lib/server/auth/set-up-door';
import { database } from '@/lib/server/database';
import { loadShop, shopSetting } from '@/lib/server/load/shop';
import { idSchema } from '@/lib/wire/claim-words';
import type { LinkAnswer } from '@/lib/wire/set-up';
import { shopDay } from '@/lib/wire/shop-day';
import { whenWords } from '@/lib/wire/views/when';

export const dynamic = 'force-dynamic';

const schema = z.strictObject({ person: idSchema });

export const POST = (request: Request): Promise<Response> =>
  forLeads(request, schema, 4096, async ({ person }, who) => {
    const db = database();
    const found = (await loadShop(db)).people[person];
    if (found === undefined || found.left)
      return setUpRefused({ outcome: 'refused', says: `“${person}” does not work here.` });
    if (!mayEnrol(who.person, found))
      return setUpRefused({
        outcome: 'not-allowed',
        says: `A link for ${found.name} opens what only an owner may do: an owner makes it.`,
      });
    const { token, expiresAt } = await makeEnrolment(db, { person, by: who.person.id });
    const { zone } = await shopSetting(db);
    const answer: LinkAnswer = {
      outcome: 'made',
      link: `${ownOrigin()}/set-up/enrol?token=${token}`,
      until: whenWords(zone, shopDay(zone)(new Date().toISOString()))(expiresAt.toISOString()),
    };
    return Response.json(answer);
  });
