/** The shop's calendar and clock: which day an instant falls on there, and which instant a local time means. */
import type { Day, Instant } from '@/lib/domain/base/vocabulary';

/** Is this a time zone by its IANA name, `Europe/Rome`? */
export const isZone = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat('en-CA', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};

/** The zone of a city that only one of them is named after, `berlin`; else what was typed, as it is. */
export const zoneOf = (typed: string, zones: readonly string[]): string => {
  const city = typed.trim().replaceAll(' ', '_').toLowerCase();
  const named = zones.filter((zone) => zone.toLowerCase().split('/').at(-1) === city);
  return named.length === 1 && named[0] !== undefined ? named[0] : typed.trim();
};

type WallClock = (milliseconds: number) => { readonly day: Day; readonly time: string };

/** What the clock on the shop's wall shows. Throws a RangeError for a zone that `isZone` denies. */
const wallClock = (zone: string): WallClock => {
  const before = clocks.get(zone);
  if (before !== undefined) return before;
  const made = newClock(zone);
  clocks.set(zone, made);
  return made;
};

/** A formatter costs more to make than a whole command to judge; there are only so many zones. */
const clocks = new Map<string, WallClock>();

const newClock = (zone: string): WallClock => {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  let last: { readonly second: number; readonly shows: ReturnType<WallClock> } | null = null;
  return (milliseconds) => {
    // The rules ask for the same moment many times over.
    const whole = Math.floor(milliseconds / 1000);
    if (last?.second === whole) return last.shows;
    const found: Partial<Record<Intl.DateTimeFormatPartTypes, string>> = {};
    for (const { type, value } of format.formatToParts(milliseconds)) found[type] = value;
    const { year = '', month = '', day = '', hour = '', minute = '', second = '' } = found;
    const shows = { day: `${year.padStart(4, '0')}-${month}-${day}`, time: `${hour}:${minute}:${second}` };
    last = { second: whole, shows };
    return shows;
  };
};

/** The shop's calendar day of an instant. */
export const shopDay = (zone: string): ((at: Instant) => Day) => {
  const clock = wallClock(zone);
  return (at) => clock(Date.parse(at)).day;
};

/** The shop's time of day, for people: `08:15`. */
export const shopTime = (zone: string): ((at: Instant) => string) => {
  const clock = wallClock(zone);
  return (at) => clock(Date.parse(at)).time.slice(0, 5);
};

const INSTANT =
  /^(\d{4}-\d{2}-\d{2})[T ](\d{2}:\d{2})(?::(\d{2})(?:\.(\d{1,3}))?)?(Z|[+-](?:0\d|1[0-4]):?[0-5]\d)?$/;
const DAY_MS = 86_400_000;

/**
 * Reads `2026-11-25T08:00`, with seconds or without, with `Z`, an offset (`+01:00`), or neither; then it is the
 * shop's own time. Null for anything else and for days that don't exist.
 *
 * When clocks go back, a time comes twice and the first is meant. When they go forward, the times in between don't
 * exist: they are read as if the clock had not been moved, so that 02:30 means what then shows as 03:30.
 */
export const readInstant = (zone: string): ((text: string) => Instant | null) => {
  const clock = wallClock(zone);
  const offsetAt = (at: number): number => {
    const { day, time } = clock(at);
    return Date.parse(`${day}T${time}Z`) - Math.floor(at / 1000) * 1000;
  };
  return (text) => {
    const [, day = '', minute = '', second = '00', fraction = '', offset] = INSTANT.exec(text.trim()) ?? [];
    const local = `${day}T${minute}:${second}.${fraction.padEnd(3, '0')}Z`;
    const utc = Date.parse(local);
    // Date.parse takes 30 February for 2 March.
    if (Number.isNaN(utc) || new Date(utc).toISOString() !== local) return null;
    if (offset !== undefined) return new Date(utc - offsetMs(offset)).toISOString();
    const before = utc - offsetAt(utc - DAY_MS);
    const after = utc - offsetAt(utc + DAY_MS);
    const isMeant = (at: number): boolean => at + offsetAt(at) === utc;
    return new Date(!isMeant(before) && isMeant(after) ? after : before).toISOString();
  };
};

const offsetMs = (offset: string): number => {
  if (offset === 'Z') return 0;
  const minutes = Number(offset.slice(1, 3)) * 60 + Number(offset.slice(-2));
  return (offset.startsWith('-') ? -minutes : minutes) * 60_000;
};
