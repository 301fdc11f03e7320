/** The clock of a day's lines: a full instant, or a time of day on the day of the line before. */
import type { Day, Instant } from '@/lib/domain/base/vocabulary';
import { readInstant, shopDay } from './shop-day';

export interface LineClock {
  /** The next line's instant, or what is wrong with it; no fault at all where an earlier line is to blame. */
  readonly next: (text: string) => Instant | { readonly faults: readonly string[] };
  /** Another time of the same line, on the same day where it names none. */
  readonly read: (text: string) => Instant | null;
  /** A line whose time can't be told: the lines after it may not know their day. */
  readonly lose: () => void;
}

const TIME_OF_DAY = /^\d{2}:\d{2}(?::\d{2})?$/;

export const lineClock = (zone: string): LineClock => {
  const instant = readInstant(zone);
  const dayOf = shopDay(zone);
  let day: Day | null = null;
  let last: { readonly at: Instant; readonly text: string } | null = null;
  let isLost = false;

  const read = (text: string): Instant | null => {
    const isTimeOfDay = TIME_OF_DAY.test(text.trim());
    if (isTimeOfDay) return day === null ? null : instant(`${day}T${text.trim()}`);
    return instant(text);
  };

  const next = (text: string): ReturnType<LineClock['next']> => {
    const at = read(text);
    if (at === null) {
      const isOnlyDayMissing = TIME_OF_DAY.test(text.trim()) && day === null;
      if (isOnlyDayMissing && isLost) return { faults: [] };
      isLost = true;
      return {
        faults: [
          isOnlyDayMissing
            ? `“${text}” names no day, and no line before it does. Write the first time as 2026-11-25T08:00.`
            : `“${text}” is no time. Write it as 2026-11-25T08:00, or 08:15 on the day of the line before.`,
        ],
      };
    }
    const before = last;
    if (before !== null && at < before.at)
      return {
        faults: [
          `“${text}” is before “${before.text}” of an earlier line: time runs backwards. Lines stand in the order the shop heard them.`,
        ],
      };
    day = dayOf(at);
    last = { at, text };
    return at;
  };

  return {
    next,
    read,
    lose: () => {
      isLost = true;
    },
  };
};
