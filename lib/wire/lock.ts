/** `POST /api/lock`: a screen that covers itself, and who comes back to it. */
import type { SignInPerson } from './views/sign-in';

export type LockRequest =
  /** A hand was on it. */
  | { readonly act: 'here' }
  | { readonly act: 'lock' }
  /** The one who was there is back. */
  | { readonly act: 'unlock'; readonly pin: string }
  /** Somebody else goes on here, in a session of their own. */
  | { readonly act: 'take-over'; readonly person: string; readonly pin: string };

export type LockAnswer =
  | { readonly outcome: 'here' }
  | { readonly outcome: 'locked'; readonly people: readonly SignInPerson[] }
  | { readonly outcome: 'open' }
  | { readonly outcome: 'taken-over' }
  | { readonly outcome: 'wrong-pin'; readonly says: string; readonly waitSeconds: number | null }
  | { readonly outcome: 'not-allowed'; readonly says: string }
  /** Its session has ended meanwhile: signed out elsewhere, revoked, or too old. */
  | { readonly outcome: 'not-signed-in'; readonly says: string }
  | { readonly outcome: 'bad-input'; readonly says: string }
  | { readonly outcome: 'busy'; readonly says: string };

export const LOCK_STATUS: Readonly<Record<LockAnswer['outcome'], number>> = {
  here: 200,
  locked: 200,
  open: 200,
  'taken-over': 200,
  'wrong-pin': 403,
  'not-allowed': 403,
  'not-signed-in': 401,
  'bad-input': 400,
  busy: 503,
};
