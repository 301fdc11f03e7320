/** Days, counts and names in the words of the board. */
import 'server-only';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import { shopDay } from '@/lib/wire/shop-day';
import type { PersonTag } from '@/lib/wire/views/car';
import { nameOfPerson } from '@/lib/wire/views/names';
import { dayWords } from '@/lib/wire/views/when';

const SMALL = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
];

/** `Six cars` begins a sentence, so small numbers are words; `1 loose end` ends one, in figures. */
export const counted = (count: number, word: string): string => {
  const plural = count === 1 ? word : `${word}s`;
  return `${word === 'loose end' ? String(count) : (SMALL[count] ?? String(count))} ${plural}`;
};

/** `A`, `A and B`, `A, B and C`. */
export const named = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

/** `Mara Mill` → `MM`; a single name gives its first two letters. */
export const initialsOf = (name: string): string => {
  const words = name.split(/\s+/).filter((word) => word !== '');
  const letters =
    words.length > 1
      ? [words[0], words.at(-1)].map((word) => Array.from(word ?? '')[0] ?? '')
      : Array.from(name).slice(0, 2);
  return letters.join('').toUpperCase();
};

/** A person as a page shows them: as they are called now or, at a moment, as they were called then. */
export const tagIn =
  (people: Facts['people']) =>
  (id: PersonId, at?: Instant): PersonTag => {
    const name = nameOfPerson(people, id, at);
    return { id, name, initials: initialsOf(name) };
  };

/** `Wednesday 25 November`, in the shop's zone. */
export const dayInWords = (instant: string, zone: string): string =>
  new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', timeZone: zone }).format(
    new Date(instant),
  );

/** `17 Jul`, or `17 Jul 2025` where it is not this year's (D60). */
export const dateText = (instant: string, now: string, zone: string): string => {
  const dayOf = shopDay(zone);
  return dayWords(dayOf(instant), dayOf(now));
};
