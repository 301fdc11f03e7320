/**
 * Slows down whoever guesses. Counted in the database, so that two instances count together, by its clock.
 *
 * A person's wrong tries count for the device they were made on, so that nobody can lock somebody out of everywhere by
 * typing rubbish on one tablet. All devices that the person has never signed in from are one place: whoever throws the
 * cookie away gains no new tries. Where three places of a person rest at once, the person rests everywhere. A device
 * that tries at many people rests as well, for everybody, but only after many more tries.
 */
import 'server-only';
import type { Database } from '@/lib/server/database';

/** Five wrong in a row: 30 s, then twice as long for each further one, up to a quarter of an hour. */
const LEAST_REST_SECONDS = 30;
const MOST_REST_SECONDS = 15 * 60;
const MOST_WRONG_OF_PERSON = 5;
const MOST_WRONG_OF_DEVICE = 20;
/** So many places of one person resting at once are no slip of the finger. */
const PLACES_TO_REST_EVERYWHERE = 3;

/** The place of all devices that a person has never signed in from. */
const NEW_PLACE = 'new';
/** A device's own line, of tries at anybody. */
const ANYBODY = '';

export interface Tries {
  /** Where the next wrong one would count. */
  readonly place: string;
  readonly wrong: number;
  /** It rests until then; null = may be tried. */
  readonly until: Date | null;
}

export interface Trying {
  readonly person: string;
  readonly device: string | null;
  /** Somebody is signed in on it, so that it is none of the unknown ones. */
  readonly isSignedIn: boolean;
}

export const readTries = async (db: Database, { person, device, isSignedIn }: Trying): Promise<Tries> => {
  const [found] = await db.$queryRaw<Tries[]>`
    WITH here AS (
      SELECT CASE
        WHEN ${device}::text IS NULL THEN ${NEW_PLACE}
        WHEN ${isSignedIn} OR EXISTS (SELECT FROM session WHERE person = ${person} AND device = ${device}) THEN ${device}
        ELSE ${NEW_PLACE}
      END AS place
    ), rests AS (
      SELECT until FROM throttle t, here WHERE t.person = ${person} AND t.place = here.place
      UNION ALL SELECT until FROM throttle WHERE person = ${ANYBODY} AND place = ${device}
      UNION ALL (
        SELECT until FROM throttle WHERE person = ${person} AND until > now()
        ORDER BY until DESC OFFSET ${PLACES_TO_REST_EVERYWHERE - 1} LIMIT 1
      )
    )
    SELECT here.place,
      coalesce((SELECT wrong FROM throttle t WHERE t.person = ${person} AND t.place = here.place), 0) AS wrong,
      (SELECT max(until) FROM rests WHERE until > now()) AS until
    FROM here`;
  if (found === undefined) throw new Error('the throttle gave no line');
  return found;
};

interface Line {
  readonly person: string;
  readonly place: string;
  /** From this many on it rests. */
  readonly most: number;
  /** After so long without one, the next is the first again. */
  readonly hours: number;
}

/** Counts one wrong try of the person at this place, and of the device; gives until when the person rests now. */
export const countWrong = async (
  db: Database,
  person: string,
  place: string,
  device: string | null,
): Promise<Date | null> => {
  const ofDevice =
    device === null
      ? null
      : await countOne(db, { person: ANYBODY, place: device, most: MOST_WRONG_OF_DEVICE, hours: 1 });
  const ofPerson = await countOne(db, { person, place, most: MOST_WRONG_OF_PERSON, hours: 24 });
  return ofPerson ?? ofDevice;
};

const countOne = async (db: Database, { person, place, most, hours }: Line): Promise<Date | null> => {
  const [found] = await db.$queryRaw<{ until: Date | null }[]>`
    INSERT INTO throttle AS t (person, place, wrong, last_at) VALUES (${person}, ${place}, 1, now())
    ON CONFLICT (person, place) DO UPDATE SET
      wrong = CASE WHEN t.last_at > now() - ${hours} * interval '1 hour' THEN t.wrong + 1 ELSE 1 END,
      until = CASE WHEN t.last_at > now() - ${hours} * interval '1 hour' AND t.wrong + 1 >= ${most}
        THEN now() + interval '1 second'
          * least(${MOST_REST_SECONDS}, ${LEAST_REST_SECONDS} * power(2, least(t.wrong + 1 - ${most}, 20))) END,
      last_at = now()
    RETURNING until`;
  return found?.until ?? null;
};

/** The right one ends the count, but not of a place that came to rest meanwhile; then false, and it must not pass. */
export const clearWrong = async (db: Database, person: string, place: string): Promise<boolean> => {
  const cleared = await db.$executeRaw`
    UPDATE throttle SET wrong = 0, until = NULL
    WHERE person = ${person} AND place = ${place} AND (until IS NULL OR until <= now())`;
  return cleared === 1;
};

/** Somebody who may has seen to it: all places of the person are open again. */
export const liftRest = async (db: Pick<Database, 'throttle'>, person: string): Promise<void> => {
  await db.throttle.updateMany({ where: { person }, data: { wrong: 0, until: null } });
};
