/** Days of the calendar, as text; which day an instant falls on is the shop's zone to say, not ours. */
import type { Day } from './vocabulary';

const MS = 86_400_000;
const textOf = (at: number): Day => new Date(at).toISOString().slice(0, 10);

/** @example addDays('2026-02-27', 2) // '2026-03-01' */
export const addDays = (day: Day, count: number): Day => textOf(Date.parse(`${day}T00:00:00Z`) + count * MS);

/** The same day of a later month, or its last day where it has no such day. */
export const addMonths = (day: Day, count: number): Day => {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year, month - 1 + count + 1, 0)).getUTCDate();
  return textOf(Date.UTC(year, month - 1 + count, Math.min(date, last)));
};

/** 1 Monday … 7 Sunday. */
const weekday = (day: Day): number => ((new Date(`${day}T00:00:00Z`).getUTCDay() + 6) % 7) + 1;

export interface ShopDays {
  /** Weekdays on which the shop is shut, 1 Monday … 7 Sunday. Never all seven. */
  readonly shut: readonly number[];
  /** Single days on which it is shut as well. */
  readonly closed: readonly Day[];
}

const isOpen = (day: Day, { shut, closed }: ShopDays): boolean =>
  !shut.includes(weekday(day)) && !closed.includes(day);

/** The first open day on or after this one, and then so many open days on. A shop that never opens is asked for 400 days. */
export const shopDayAfter = (from: Day, count: number, shop: ShopDays): Day => {
  let day = from;
  for (let [left, tried] = [count, 0]; tried < 400 + count; tried += 1, day = addDays(day, 1)) {
    if (!isOpen(day, shop)) continue;
    if (left === 0) return day;
    left -= 1;
  }
  return day;
};
