/** What the shop is called and by which calendar it counts: the owner's. Whoever signs does so under that name. */
import { z } from 'zod';
import { forLeads, setUpRefused } from '@/lib/server/auth/set-up-door';
import { hasRole } from '@/lib/server/auth/session';
import { database } from '@/lib/server/database';
import { setShop } from '@/lib/server/new-shop';
import { isZone } from '@/lib/wire/shop-day';
import type { ShopAnswer } from '@/lib/wire/set-up';

export const dynamic = 'force-dynamic';

const schema = z.strictObject({
  name: z
    .string()
    .trim()
    .min(1, 'must not be empty')
    .max(100, 'is longer than 100 characters')
    .refine((text) => !/\p{C}/u.test(text), 'holds characters that can’t be seen'),
  zone: z.string().max(100).refine(isZone, 'is no time zone; choose one like Europe/London'),
});

export const POST = (request: Request): Promise<Response> =>
  forLeads(request, schema, 4096, async (asked, who) => {
    if (!hasRole(who, ['owner']))
      return setUpRefused({ outcome: 'not-allowed', says: 'What the shop is called, an owner says.' });
    const wrong = await setShop(database(), asked);
    return wrong === null
      ? Response.json({ outcome: 'done' } satisfies ShopAnswer)
      : setUpRefused({ outcome: 'refused', says: wrong });
  });
