/** The shop's clock as the log writes it. */
import type { Day, Instant } from '@/lib/domain/base/vocabulary';
import { shopDay, shopTime } from '@/lib/wire/shop-day';
import { dayWords } from '@/lib/wire/views/when';
import type { Telling } from './entries';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
const WEEK_MS = 6 * 86_400_000;

const noon = (day: Day): Date => new Date(`${day}T12:00:00Z`);

/** `Wed` within the last days, `12 Mar` before; `Wednesday 25 November`. */
export const logClock = (zone: string, today: Day): Telling['clock'] => {
  const dayOf = shopDay(zone);
  return {
    time: shopTime(zone),
    day: (at: Instant) => {
      const day = dayOf(at);
      const isRecent = Math.abs(noon(today).getTime() - noon(day).getTime()) <= WEEK_MS;
      const weekday = WEEKDAYS[noon(day).getUTCDay()] ?? '';
      return isRecent ? weekday.slice(0, 3) : dayWords(day, today);
    },
    date: (at: Instant) => {
      const day = dayOf(at);
      const [year = '', month = '', date = ''] = day.split('-');
      const weekday = WEEKDAYS[noon(day).getUTCDay()] ?? '';
      const text = `${weekday} ${String(Number(date))} ${MONTHS[Number(month) - 1] ?? ''}`;
      return year === today.slice(0, 4) ? text : `${text} ${year}`;
    },
  };
};
