import { headers } from 'next/headers';
import { LockScreen } from '@/components/lock/lock-screen';
import { ownPath } from '@/lib/server/auth/next-auth';
import { PATH_HEADER } from '@/lib/server/auth/passed-headers';
import { seatEvenLocked } from '@/lib/server/auth/session';
import { initialsOf } from '@/lib/server/queries/board/words';

/** Pages on which somebody signs in: there is nothing to cover. */
const OPEN = new Set(['/sign-in', '/set-up/enrol', '/tablet']);

/** The cover that waits over every page of somebody who is signed in. */
export async function LockGate() {
  const url = new URL((await headers()).get(PATH_HEADER) ?? '/', 'http://here');
  if (OPEN.has(url.pathname)) return null;
  // Out of reach: the page below says so itself.
  const seat = await seatEvenLocked().catch(() => null);
  if (seat === null) return null;
  const { person, idleMinutes, isLocked } = seat;
  return (
    <LockScreen
      key={seat.session}
      me={{ id: person.id, name: person.name, initials: initialsOf(person.name) }}
      minutes={idleMinutes}
      startsLocked={isLocked}
      to={url.pathname === '/locked' ? ownPath(url.searchParams.get('to')) : null}
    />
  );
}
