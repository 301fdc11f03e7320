/** Enrols tablets, which is the owner's, and takes them off, which a lead may too. */
import { z } from 'zod';
import { ownOrigin } from '@/lib/server/auth/setting';
import { forLeads, setUpRefused } from '@/lib/server/auth/set-up-door';
import { hasRole } from '@/lib/server/auth/session';
import { changeTablet, enrolTablet, makeTabletCode, revokeTablet } from '@/lib/server/auth/tablets';
import { database } from '@/lib/server/database';
import { shopSetting } from '@/lib/server/load/shop';
import type { TabletAnswer } from '@/lib/wire/set-up';
import { shopTime } from '@/lib/wire/shop-day';

export const dynamic = 'force-dynamic';

const name = z
  .string()
  .trim()
  .min(1, 'must not be empty')
  .max(60, 'is longer than 60 characters')
  .refine((text) => !/\p{C}/u.test(text), 'holds characters that can’t be seen');
const minutes = z.int().min(1).max(240);
const device = z.string().regex(/^[0-9a-f]{16}$/);
const schema = z.discriminatedUnion('act', [
  z.strictObject({ act: z.literal('enrol-this'), name, minutes }),
  z.strictObject({ act: z.literal('make-code'), name, minutes }),
  z.strictObject({ act: z.literal('change'), device, name, minutes }),
  z.strictObject({ act: z.literal('revoke'), device }),
]);

const done = (answer: TabletAnswer): Response => Response.json(answer);
const gone = (): Response =>
  setUpRefused({ outcome: 'refused', says: 'It is not on the list any more. Load the page again.' });

export const POST = (request: Request): Promise<Response> =>
  forLeads(request, schema, 4096, async (asked, who) => {
    const db = database();
    const by = who.person.id;
    if (asked.act === 'revoke')
      return (await revokeTablet(db, asked.device, by)) ? done({ outcome: 'done' }) : gone();
    if (!hasRole(who, ['owner']))
      return setUpRefused({
        outcome: 'not-allowed',
        says: 'An owner enrols tablets; a lead may take them off.',
      });
    switch (asked.act) {
      case 'enrol-this':
        if (who.device === null) return gone();
        await enrolTablet(db, who.device, asked, by);
        return done({ outcome: 'done' });
      case 'change':
        return (await changeTablet(db, asked.device, asked)) ? done({ outcome: 'done' }) : gone();
      case 'make-code': {
        const { code, expiresAt } = await makeTabletCode(db, asked, by);
        const { zone } = await shopSetting(db);
        return done({
          outcome: 'made',
          code,
          link: `${ownOrigin()}/tablet?code=${code}`,
          until: shopTime(zone)(expiresAt.toISOString()),
        });
      }
    }
  });
