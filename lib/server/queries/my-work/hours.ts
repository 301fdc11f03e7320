/** Hours of one person from the log: what runs now and since when, and how much of today. */
import 'server-only';
import type { Instant, PersonId } from '@/lib/domain/base/vocabulary';
import type { CarEvent } from '@/lib/domain/events';
import { CLOCK_EVENTS, minutesOf, workSpans } from '@/lib/domain/hours';
import type { WorkSpan } from '@/lib/domain/hours';
import { upcast } from '@/lib/domain/upcast';
import type { StoredEvent } from '@/lib/domain/upcast';
import { readInstant, shopDay } from '@/lib/wire/shop-day';
import type { Database } from '@/lib/server/database';

export interface Hours {
  readonly running: readonly WorkSpan[];
  readonly minutesToday: number;
}

/** Work that began before this many days is not followed: nobody leaves a clock running for longer. */
const DAYS = 8;

export const hoursOf = async (db: Database, me: PersonId, now: Instant, zone: string): Promise<Hours> => {
  const from = new Date(Date.parse(now) - DAYS * 86_400_000);
  const rows = await db.event.findMany({
    where: { type: { in: [...CLOCK_EVENTS] }, at: { gte: from } },
    orderBy: { position: 'asc' },
    select: { body: true },
  });
  const spans = workSpans(rows.flatMap(({ body }) => eventIn(body))).filter(({ person }) => person === me);
  const midnight = readInstant(zone)(`${shopDay(zone)(now)}T00:00`) ?? now;
  // What began yesterday and goes on counts from midnight.
  const ofToday = spans
    .filter(({ until }) => until === null || until > midnight)
    .map((span) => ({ ...span, from: span.from < midnight ? midnight : span.from }));
  return {
    running: spans.filter(({ until }) => until === null),
    minutesToday: minutesOf(ofToday, now)[me] ?? 0,
  };
};

const eventIn = (body: string): readonly CarEvent[] => {
  const { event } = JSON.parse(body) as { readonly event: StoredEvent };
  const told = upcast(event);
  return told.stream === 'car' ? [told] : [];
};
