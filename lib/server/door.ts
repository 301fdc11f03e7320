/** The command door behind its HTTP: from a read request to an answer in words. */
import 'server-only';
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { NameOf } from '@/lib/domain/base/sentences';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { Command } from '@/lib/domain/commands';
import type { DoorAnswer, DoorRequest } from '@/lib/wire/door';
import { shopDay } from '@/lib/wire/shop-day';
import { namesOf } from '@/lib/wire/views/names';
import { withTimes } from '@/lib/wire/views/when';
import { endSessionsOf } from './auth/credentials';
import { noteContact } from './auth/session-row';
import type { Seat } from './auth/session-row';
import { signerOf } from './auth/signer';
import { reporterWhileLocked } from './auth/while-locked';
import type { Database } from './database';
import type { RunAnswer } from './given';
import { loadPlan } from './load/plan';
import { loadShop } from './load/shop';
import { isConflict, isOutOfReach } from './retry';
import { runCommand } from './run-command';

export const answerTo = async (db: Database, request: DoorRequest, seat: Seat): Promise<DoorAnswer> => {
  const signed = await signerOf(db, request, seat);
  return signed.ok ? answerAs(db, request, seat, signed) : signed.answer;
};

/** The screen is covered, so that nobody is there but the clock of a check that somebody began. */
export const answerWhileLocked = async (
  db: Database,
  request: DoorRequest,
  seat: Seat,
): Promise<DoorAnswer> => {
  const actor = await reporterWhileLocked(db, request.command);
  return actor === null
    ? {
        outcome: 'not-signed-in',
        says: 'This screen is locked. Unlock it with your PIN and do it again; nothing was recorded.',
      }
    : answerAs(db, request, seat, { actor, present: actor === seat.person.id ? null : seat.person.id });
};

const answerAs = async (
  db: Database,
  { command, sequence }: DoorRequest,
  seat: Seat,
  signed: { readonly actor: PersonId; readonly present: PersonId | null },
): Promise<DoorAnswer> => {
  const now = new Date().toISOString();
  const ran = await runCommand(db, seat.zone, {
    command,
    actor: signed.actor,
    present: signed.present,
    device: seat.device,
    lastContact: seat.lastContact?.toISOString() ?? null,
    // Asked again for want of an answer, a command has the same number as before.
    isInOrder: sequence === undefined || BigInt(sequence) >= seat.lastSequence,
    now,
  });
  await noteContact(db, seat.device, now, sequence);
  // Who signs in, and how, goes by the roles: with other roles everybody comes in anew.
  if (
    ran.outcome === 'accepted' &&
    command.claim.type === 'change-roles' &&
    command.claim.person !== seat.person.id
  )
    await endSessionsOf(db, command.claim.person);
  return inWords(db, command, ran, withTimes(seat.zone, shopDay(seat.zone)(now)));
};

const inWords = async (
  db: Database,
  command: Command,
  ran: RunAnswer,
  spoken: (sentence: string) => string,
): Promise<DoorAnswer> => {
  if (ran.outcome === 'accepted') return ran;
  if (ran.outcome === 'conflict')
    return {
      outcome: 'conflict',
      says: 'This id was used before for something else. Nothing was recorded; load the page again and do it anew.',
    };
  const nameOf = await namesFor(db, command);
  const refusals = ran.refusals.map((refusal) => ({
    refusal,
    sentence: spoken(sentence(refusal, nameOf)),
  }));
  // Who may not do it at all is told so, and nothing about the state of things.
  return ran.refusals.every(isAboutAuthority)
    ? { outcome: 'not-allowed', says: refusals.map((each) => each.sentence).join(' ') }
    : { outcome: 'refused', already: ran.already, refusals };
};

const isAboutAuthority = ({ code }: Refusal): boolean => code === 'not-allowed' || code === 'unknown-person';

/** The plan's names for the things of the car, the shop's for people and tools. */
const namesFor = async (db: Database, { claim }: Command): Promise<NameOf> => {
  const shop = await loadShop(db);
  const hash =
    'plan' in claim
      ? claim.plan
      : 'car' in claim
        ? (await db.car.findUnique({ where: { id: claim.car }, select: { plan: true } }))?.plan
        : undefined;
  const document = hash === undefined ? null : await loadPlan(db, hash);
  const inPlan = document === null ? () => null : namesOf(document);
  return (key) => inPlan(key) ?? shop.people[key]?.name ?? shop.tools[key]?.name ?? null;
};

/** What went wrong below, for whoever asked: nothing is known to be done, and asking again is safe. */
export const answerToTrouble = (
  error: unknown,
  command: string,
): { readonly answer: DoorAnswer; readonly status: number } => {
  const isPassing = isOutOfReach(error) || isConflict(error);
  console.error(
    JSON.stringify({
      at: 'command door',
      command,
      trouble: error instanceof Error ? error.message.split('\n').at(-1) : 'unknown',
      ...(isPassing ? {} : { stack: error instanceof Error ? error.stack : undefined }),
    }),
  );
  return isPassing
    ? {
        status: 503,
        answer: {
          outcome: 'busy',
          says: 'The shop’s books are out of reach. It may be recorded or not; asked again, it can’t count twice.',
        },
      }
    : {
        status: 500,
        answer: {
          outcome: 'busy',
          says: 'Something broke here, and it is on the server’s list. It may be recorded or not; asked again, it can’t count twice.',
        },
      };
};
