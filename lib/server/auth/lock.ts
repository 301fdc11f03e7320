/** What is done at a covered screen: the same person comes back, or another one takes over. */
import 'server-only';
import type { Database } from '@/lib/server/database';
import type { LockAnswer, LockRequest } from '@/lib/wire/lock';
import { signersIn } from '@/lib/server/queries/sign-in';
import { checkPin } from './check';
import { lockSession, noteActive, unlockSession } from './idle';
import { TooBusy } from './secret-hash';
import { endSession } from './session-row';
import type { Seat } from './session-row';
import { signIn } from './sign-in';

export interface LockDone {
  readonly answer: LockAnswer;
  /** The session that begins with it: what the browser's cookie must carry from now on. */
  readonly session: string | null;
}

const done = (answer: LockAnswer, session: string | null = null): LockDone => ({ answer, session });

export const atTheLock = async (
  db: Database,
  request: LockRequest,
  seat: Seat,
  deviceToken: string | null,
): Promise<LockDone> => {
  try {
    switch (request.act) {
      case 'here':
        await noteActive(db, seat.session);
        return done({ outcome: 'here' });
      case 'lock':
        await lockSession(db, seat.session);
        return done({ outcome: 'locked', people: await signersIn(db) });
      case 'unlock':
        return done(await unlock(db, seat, request.pin));
      case 'take-over':
        return await takeOver(db, seat, request, deviceToken);
    }
  } catch (error) {
    if (!(error instanceof TooBusy)) throw error;
    return done({ outcome: 'busy', says: 'Too many PINs at once. Nothing was looked at; try again.' });
  }
};

const unlock = async (
  db: Database,
  { person, device, session, standing }: Seat,
  pin: string,
): Promise<LockAnswer> => {
  if (standing === 'revoked')
    return { outcome: 'not-allowed', says: 'No PIN is taken on this tablet any more. Sign in by password.' };
  const checked = await checkPin(db, { person: person.id, secret: pin, device }, true);
  if (checked.outcome !== 'right') return wrong(person.name, checked.until);
  await unlockSession(db, session);
  return { outcome: 'open' };
};

const takeOver = async (
  db: Database,
  seat: Seat,
  { person, pin }: Extract<LockRequest, { act: 'take-over' }>,
  deviceToken: string | null,
): Promise<LockDone> => {
  const signed = await signIn(db, { door: 'bench', name: person, secret: pin, deviceToken });
  if (signed.outcome === 'in') {
    // One browser, one session: whoever was there signs in anew, and finds the drafts as they were.
    await endSession(db, seat.session);
    return done({ outcome: 'taken-over' }, signed.session);
  }
  if (signed.outcome === 'no-tablet')
    return done({
      outcome: 'not-allowed',
      says: 'This browser is no tablet of the shop: nobody comes in by a PIN here. An owner enrols it.',
    });
  if (signed.outcome === 'busy') throw new TooBusy();
  const found = await db.person.findUnique({ where: { id: person }, select: { name: true } });
  return done(wrong(found?.name ?? 'This person', signed.outcome === 'resting' ? signed.until : null));
};

const wrong = (name: string, until: Date | null): LockAnswer => ({
  outcome: 'wrong-pin',
  says:
    until === null
      ? `This is not ${name}’s PIN. It stays locked.`
      : `${name}’s PIN rests after too many wrong ones. Everybody else can go on here.`,
  waitSeconds: until === null ? null : Math.max(1, Math.ceil((until.getTime() - Date.now()) / 1000)),
});
