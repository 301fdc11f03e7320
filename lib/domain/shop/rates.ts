/** What an hour of the shop costs, from which day on. It is the shop's, never a person's, and no fact that a rule sees. */
import { exact } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Day } from '@/lib/domain/base/vocabulary';

export interface HourRate {
  /** From this day on, until a later one begins: a day has one rate, and to say it again changes it. */
  readonly id: Day;
  /** Of one hour of one person, in the smallest unit of money. */
  readonly money: number;
}

export type HourRates = Readonly<Record<Day, HourRate>>;

/** The rate of that day; null = nobody has said one that early. */
export const rateOn = (rates: HourRates, day: Day): Exact | null => {
  const last = Object.values(rates)
    .filter(({ id }) => id <= day)
    .reduce<HourRate | null>((found, each) => (found === null || each.id > found.id ? each : found), null);
  return last === null ? null : exact(last.money);
};
