/** The demo shop's days and hours, counted back from the day that it is shown on. */
import type { Day, Instant } from '@/lib/domain/base/vocabulary';
import { readInstant, shopDay, shopTime } from '@/lib/wire/shop-day';

const OPENS = '08:00';
const CLOSES = '16:30';
/** By then everything of the last day has happened. */
const SHOWN_AT = '11:00';
const MINUTE = 60_000;

/** A stretch of working time, in milliseconds. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export const addDays = (day: Day, days: number): Day => {
  const date = new Date(`${day}T12:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
};

/** 0 is Sunday. */
const weekday = (day: Day): number => new Date(`${day}T12:00:00Z`).getUTCDay();

/** The last day whose morning is over and that a shop may be at work on, a Saturday at need: what is told of it is past. */
export const lastShownDay = (now: Instant, zone: string): Day => {
  const today = shopDay(zone)(now);
  const day = shopTime(zone)(now) >= SHOWN_AT ? today : addDays(today, -1);
  return weekday(day) === 0 ? addDays(day, -1) : day;
};

export class Calendar {
  readonly today: Day;
  private readonly read: (text: string) => Instant | null;
  private readonly dayAt: (at: Instant) => Day;
  private readonly hours = new Map<Day, Span>();

  constructor(today: Day, zone: string) {
    this.today = today;
    this.read = readInstant(zone);
    this.dayAt = shopDay(zone);
  }

  dayOf(milliseconds: number): Day {
    return this.dayAt(new Date(milliseconds).toISOString());
  }

  /** A time of a day, `08:15`, in milliseconds. */
  at(day: Day, time: string): number {
    const instant = this.read(`${day}T${time}`);
    if (instant === null) throw new Error(`no such time: ${day} ${time}`);
    return Date.parse(instant);
  }

  /** The nth working day before the last one, which is number 0. */
  day(before: number): Day {
    let day = this.today;
    for (let left = before; left > 0;) {
      day = addDays(day, -1);
      if (this.isOpen(day)) left -= 1;
    }
    return day;
  }

  /** Mondays to Fridays; and the last day, whichever it is. */
  private isOpen(day: Day): boolean {
    return day === this.today || (weekday(day) > 0 && weekday(day) < 6);
  }

  private hoursOf(day: Day): Span {
    const known = this.hours.get(day);
    if (known !== undefined) return known;
    const found = { from: this.at(day, OPENS), to: this.at(day, CLOSES) };
    this.hours.set(day, found);
    return found;
  }

  /** The first working moment at or after. */
  opening(from: number): number {
    for (let day = this.dayOf(from); ; day = addDays(day, 1)) {
      if (!this.isOpen(day)) continue;
      const hours = this.hoursOf(day);
      if (from < hours.to - MINUTE) return Math.max(from, hours.from);
    }
  }

  /** So many minutes of work from then on, one span for each day that they reach into. */
  spans(from: number, minutes: number): readonly Span[] {
    const found: Span[] = [];
    let left = minutes * MINUTE;
    let at = this.opening(from);
    while (left > 0) {
      const { to } = this.hoursOf(this.dayOf(at));
      const end = Math.min(to, at + left);
      found.push({ from: at, to: end });
      left -= end - at;
      if (left > 0) at = this.opening(end);
    }
    return found;
  }
}

/** The moment at which a share of the work in these spans is done. */
export const momentIn = (spans: readonly Span[], share: number): number => {
  let left = spans.reduce((sum, { from, to }) => sum + to - from, 0) * share;
  for (const { from, to } of spans) {
    if (left <= to - from) return from + Math.floor(left / MINUTE) * MINUTE;
    left -= to - from;
  }
  return spans.at(-1)?.to ?? 0;
};
