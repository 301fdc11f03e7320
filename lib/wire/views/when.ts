/** Days and times as the shop writes them: `Fri 27 Nov 13:12`, `12 Mar 2027`. Beyond this year the year is said (D60). */
import type { Day, Instant } from '@/lib/domain/base/vocabulary';
import { shopDay, shopTime } from '@/lib/wire/shop-day';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** `12 Mar`, and `12 Mar 2027` in another year than `today`. */
export const dayWords = (day: Day, today: Day): string => {
  const [year = '', month = '', date = ''] = day.split('-');
  const short = `${String(Number(date))} ${MONTHS[Number(month) - 1] ?? month}`;
  return year === today.slice(0, 4) ? short : `${short} ${year}`;
};

/** `Fri 27 Nov`. */
export const weekdayWords = (day: Day, today: Day): string =>
  `${WEEKDAYS[new Date(`${day}T12:00:00Z`).getUTCDay()] ?? ''} ${dayWords(day, today)}`;

/** `Fri 27 Nov 13:12`, on the shop's own clock. */
export const whenWords = (zone: string, today: Day): ((at: Instant) => string) => {
  const dayOf = shopDay(zone);
  const timeOf = shopTime(zone);
  return (at) => {
    const day = dayOf(at);
    const weekday = WEEKDAYS[new Date(`${day}T12:00:00Z`).getUTCDay()] ?? '';
    return `${weekday} ${dayWords(day, today)} ${timeOf(at)}`;
  };
};

const INSTANT = /\b\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?Z/g;
const DAY = /\b\d{4}-\d{2}-\d{2}\b/g;

/** Inside a word: `can't`. The rulebook writes what a keyboard gives. */
const APOSTROPHE = /(\p{L})'(\p{L})/gu;

/** A sentence of the rulebook as a page writes it, its times on the shop's clock: the rulebook knows no calendar. */
export const withTimes = (zone: string, today: Day): ((sentence: string) => string) => {
  const when = whenWords(zone, today);
  return (sentence) =>
    sentence
      .replace(INSTANT, (at) => when(at))
      .replace(DAY, (day) => dayWords(day, today))
      .replace(APOSTROPHE, '$1’$2');
};
