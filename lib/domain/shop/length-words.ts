/** How a bolt's length was come to, and what stands against one, in words. */
import { toDecimalText, toInchText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { counted } from '@/lib/domain/base/words';
import type { Thread } from '@/lib/domain/torque/strength';
import { wholeThreads } from './length';
import type { JudgedLength, LengthAnswer, LengthNeeded, LengthRefusal, Term } from './length';

type Unit = Thread['unit'];

/** A measured length: thousandths of an inch, hundredths of a millimetre. */
const measured = (length: Exact, unit: Unit): string => toDecimalText(length, unit === 'in' ? 3 : 2);

/** A bolt's own length, as it is called: `1-3/4 in`, `40 mm`. */
export const called = (length: Exact, unit: Unit): string =>
  unit === 'mm' || 64n % length.den !== 0n
    ? `${toDecimalText(length, 3)} ${unit}`
    : `${toInchText(length)} in`;

const TERMS: Readonly<Record<Term['what'], (count: number) => string>> = {
  grip: () => 'grip',
  washers: (count) => counted(count, 'washer'),
  nut: () => 'nut',
  threads: (count) => counted(count, 'thread'),
};

/** `grip 1 + 2 washers 0.16 + nut 0.337 + 2 threads 0.125 = 1.622 in`. */
export const neededWords = ({ terms, length, unit }: LengthNeeded): string =>
  `${terms
    .filter(({ count }) => count > 0)
    .map((term) => `${TERMS[term.what](term.count)} ${measured(term.length, unit)}`)
    .join(' + ')} = ${measured(length, unit)} ${unit}`;

/** The whole answer, term by term, and what stands against it. */
export const lengthWords = ({ needed, pick, refusals }: LengthAnswer): string =>
  [
    `${neededWords(needed)}.`,
    ...(pick === null
      ? []
      : [
          `Next length in the catalogue: ${called(pick.length, needed.unit)}. ${pickWords(pick, needed.unit)}`,
        ]),
    ...refusals.map(lengthSentence),
  ].join(' ');

const pickWords = (pick: JudgedLength, unit: Unit): string => {
  const shank =
    pick.shank.num === 0n
      ? 'it is threaded to the head'
      : `its shank of ${measured(pick.shank, unit)} has room up to ${measured(pick.shankRoom, unit)}`;
  return `${counted(wholeThreads(pick), 'whole thread')} ${wholeThreads(pick) === 1 ? 'stands' : 'stand'} out; ${shank}.`;
};

/** What is wrong, and what clears it. */
export const lengthSentence = (refusal: LengthRefusal): string => {
  switch (refusal.code) {
    case 'bolt-too-short':
      return `${called(refusal.length, refusal.unit)} is too short: the joint asks for ${measured(refusal.needed, refusal.unit)} ${refusal.unit}. Take the next longer one.`;
    case 'no-such-length':
      return refusal.longest === null
        ? `The catalogue has no such bolt; ${measured(refusal.needed, refusal.unit)} ${refusal.unit} are needed. Add one that is long enough.`
        : `The longest in the catalogue is ${called(refusal.longest, refusal.unit)}; ${measured(refusal.needed, refusal.unit)} ${refusal.unit} are needed. Add a longer one.`;
    case 'nut-reaches-shank':
      return `The shank of ${called(refusal.length, refusal.unit)} is ${measured(refusal.shank, refusal.unit)} ${refusal.unit} long and the nut reaches it after ${measured(refusal.room, refusal.unit)}: it would be tight on the bolt and not on the joint. Take a bolt threaded to its head, or add washers if the plan allows them.`;
    case 'stands-out-too-far':
      return `${toDecimalText(refusal.threads, 1)} threads of ${called(refusal.length, refusal.unit)} would stand out, at most ${String(refusal.most)} may. Take a shorter one, or add a washer.`;
    case 'too-many-washers':
      return `${counted(refusal.washers, 'washer')} are more than the ${String(refusal.most)} that one bolt may have. Take a shorter bolt.`;
  }
};
