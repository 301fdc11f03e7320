/** Who signs: at each signature the signer's own PIN is asked again, whoever is signed in (D4). */
import 'server-only';
import { SIGNS } from '@/lib/domain/authority';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Database } from '@/lib/server/database';
import type { DoorAnswer, DoorRequest } from '@/lib/wire/door';
import { checkPin } from './check';
import { TooBusy } from './secret-hash';
import type { Seat } from './session-row';
import { takesPins } from './tablets';

export type Signed =
  | { readonly ok: true; readonly actor: PersonId; readonly present: PersonId | null }
  | { readonly ok: false; readonly answer: DoorAnswer };

/** The actor of a command: whose PIN was given; where none is needed and none is given, who is signed in. */
export const signerOf = async (
  db: Database,
  { command, signer }: DoorRequest,
  seat: Seat,
): Promise<Signed> => {
  const signedIn = seat.person.id;
  if (signer === undefined)
    return SIGNS.has(command.claim.type)
      ? {
          ok: false,
          answer: {
            outcome: 'bad-input',
            fields: [{ field: 'signer', says: 'This is a signature: say who signs, with their PIN.' }],
          },
        }
      : { ok: true, actor: signedIn, present: null };
  const where = whereRefused(seat, signer.person);
  if (where !== null) return { ok: false, answer: { outcome: 'not-allowed', says: where } };
  const tried = { person: signer.person, secret: signer.pin, device: seat.device };
  try {
    const checked = await checkPin(db, tried, true);
    if (checked.outcome === 'right')
      return { ok: true, actor: signer.person, present: signer.person === signedIn ? null : signedIn };
    return { ok: false, answer: await wrongPin(db, signer.person, checked.until) };
  } catch (error) {
    if (!(error instanceof TooBusy)) throw error;
    return {
      ok: false,
      answer: { outcome: 'busy', says: 'Too many PINs at once. Nothing was recorded; it is tried again.' },
    };
  }
};

/**
 * Why no PIN of this person is taken on this device, or null. At a desk that is no tablet whoever came by password
 * signs with their own PIN; nobody else's is looked at there, so that it can't be guessed at from anywhere.
 */
const whereRefused = ({ standing, person }: Seat, signer: PersonId): string | null => {
  if (standing === 'revoked')
    return 'This tablet was taken off the shop’s list: no PIN is taken here. Nothing was signed. An owner can enrol it again.';
  return takesPins(standing) || signer === person.id
    ? null
    : `This browser is no tablet of the shop: only ${person.name} signs here. Nothing was signed. Sign on a tablet, or an owner enrols this one.`;
};

const wrongPin = async (db: Database, signer: PersonId, until: Date | null): Promise<DoorAnswer> => {
  const found = await db.person.findUnique({ where: { id: signer }, select: { name: true } });
  const credential = await db.credential.findUnique({ where: { person: signer }, select: { pinHash: true } });
  const name = found?.name ?? signer;
  if (until !== null)
    return {
      outcome: 'wrong-pin',
      says: `${name}’s PIN rests after too many wrong ones. Nothing was signed.`,
      waitSeconds: Math.max(1, Math.ceil((until.getTime() - Date.now()) / 1000)),
    };
  const says =
    found !== null && (credential?.pinHash ?? null) === null
      ? `${name} has no PIN yet. The lead makes a link for it under People; nothing was signed.`
      : `This is not ${name}’s PIN. Nothing was signed.`;
  return { outcome: 'wrong-pin', says, waitSeconds: null };
};
