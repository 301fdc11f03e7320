/**
 * The store of photographs, beside the one write path: what is put in here says nothing about a car until a command
 * names it. Put in once, by the fingerprint of the original; the original itself stays on the device.
 */
import 'server-only';
import { createHash } from 'node:crypto';
import type { Database } from '@/lib/server/database';
import { LONGEST_SIDE, MOST_AN_HOUR, photoTypeOf } from '@/lib/wire/photos';
import type { PhotoAnswer, PhotoSent } from '@/lib/wire/photos';
import { cleanJpeg } from './clean-jpeg';

export interface Taker {
  readonly person: string;
  readonly device: string | null;
}

const AN_HOUR_MS = 3_600_000;

/** Looks at the copy that was sent, and keeps its picture and nothing else of it. */
export const keepPhoto = async (
  db: Database,
  sent: PhotoSent,
  copy: Uint8Array,
  taker: Taker,
): Promise<PhotoAnswer> => {
  if (createHash('sha256').update(copy).digest('hex') !== sent.copy)
    return bad('The photograph did not arrive as it was sent. Send it again.');
  if (photoTypeOf(copy) !== 'image/jpeg')
    return bad('The copy of a photograph is sent as JPEG; this is none.');
  const clean = cleanJpeg(copy);
  if (!clean.ok) return bad('The photograph is broken or cut off. Take it again.');
  const { bytes, width, height } = clean;
  if (Math.min(width, height) < 1 || Math.max(width, height) > LONGEST_SIDE)
    return bad(
      `The copy is ${String(width)} × ${String(height)} pixels; no side may be longer than ${String(LONGEST_SIDE)}.`,
    );
  const before = await here(db, sent);
  if (before !== null) return before;
  if ((await db.car.findUnique({ where: { id: sent.car }, select: { id: true } })) === null)
    return { outcome: 'not-found', says: `There is no car ${sent.car} here.` };
  const since = new Date(Date.now() - AN_HOUR_MS);
  if ((await db.photo.count({ where: { takenBy: taker.person, at: { gte: since } } })) >= MOST_AN_HOUR)
    return {
      outcome: 'too-many',
      says: `That are ${String(MOST_AN_HOUR)} photographs within an hour. The next one can be sent later.`,
    };
  const { count } = await db.photo.createMany({
    data: [
      {
        sha256: sent.sha256,
        car: sent.car,
        bytes: sent.bytes,
        type: sent.type,
        copy: Uint8Array.from(bytes),
        width,
        height,
        takenBy: taker.person,
        device: taker.device,
      },
    ],
    // A twin may have come first, from a screen that asked again.
    skipDuplicates: true,
  });
  return count === 1
    ? { outcome: 'kept', hash: sent.sha256, already: false }
    : ((await here(db, sent)) ?? { outcome: 'busy', says: 'It could not be kept. Send it again.' });
};

const here = async (db: Database, { sha256, car }: PhotoSent): Promise<PhotoAnswer | null> => {
  const found = await db.photo.findUnique({ where: { sha256 }, select: { car: true } });
  if (found === null) return null;
  return found.car === car
    ? { outcome: 'kept', hash: sha256, already: true }
    : {
        outcome: 'refused',
        says: `This very photograph is kept already, of ${found.car}. Take one of this car.`,
      };
};

const bad = (says: string): PhotoAnswer => ({ outcome: 'bad-input', says });

/** The copy; null where there is none of that name. */
export const photoCopy = async (db: Database, sha256: string): Promise<Uint8Array<ArrayBuffer> | null> =>
  (await db.photo.findUnique({ where: { sha256 }, select: { copy: true } }))?.copy ?? null;
