/** Ends the rest that too many wrong tries brought upon somebody. */
import { z } from 'zod';
import { forLeads, setUpRefused } from '@/lib/server/auth/set-up-door';
import { liftRest } from '@/lib/server/auth/throttle';
import { database } from '@/lib/server/database';
import { idSchema } from '@/lib/wire/claim-words';
import type { LiftAnswer } from '@/lib/wire/set-up';

export const dynamic = 'force-dynamic';

const schema = z.strictObject({ person: idSchema });

export const POST = (request: Request): Promise<Response> =>
  forLeads(request, schema, 4096, async ({ person }, who) => {
    // Whoever is guessing at a PIN must not be the one who lets the guessing go on.
    if (person === who.person.id)
      return setUpRefused({
        outcome: 'not-allowed',
        says: 'Another lead or an owner lifts yours, or you wait.',
      });
    await liftRest(database(), person);
    const answer: LiftAnswer = { outcome: 'lifted' };
    return Response.json(answer);
  });
