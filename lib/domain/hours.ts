/**
 * Hours: who was at which work from when to when. They come from the log, which says when each started, joined,
 * resumed or took over, when they stepped out, and when the work stopped for everybody on it.
 */
import type { CarId, Instant, PersonId, StateKey } from './base/vocabulary';
import type { CarEvent, EventType } from './events';

/** One stretch of one person's work; `until` null = the clock runs. */
export interface WorkSpan {
  readonly person: PersonId;
  readonly car: CarId;
  readonly operation: StateKey;
  readonly run: number;
  readonly from: Instant;
  readonly until: Instant | null;
}

/** The events that hours are made of; the others need not be read. */
export const CLOCK_EVENTS: readonly EventType[] = [
  'operation-started',
  'operation-joined',
  'operation-resumed',
  'operation-left',
  'operation-paused',
  'operation-finished',
  'operation-due-again',
];

/** The stretches of work that these events tell of, in the order in which they began. Each car's own events in order. */
export const workSpans = (events: Iterable<CarEvent>): readonly WorkSpan[] => {
  const spans: WorkSpan[] = [];
  /** Places in `spans` of those that still run, by car and operation. */
  const running = new Map<string, number[]>();
  const stop = (work: string, at: Instant, person: PersonId | null = null): void => {
    const goOn: number[] = [];
    for (const place of running.get(work) ?? []) {
      const span = spans[place];
      if (span === undefined) continue;
      if (person === null || span.person === person) spans[place] = { ...span, until: at };
      else goOn.push(place);
    }
    running.set(work, goOn);
  };
  for (const event of events) {
    const work = 'operation' in event ? `${event.car} ${event.operation}` : '';
    const { at, by } = event.meta;
    switch (event.type) {
      case 'operation-started':
      case 'operation-joined':
      case 'operation-resumed': {
        // Taken over: whoever was on it no longer is. Started: nobody can be.
        const isAlone =
          event.type === 'operation-started' || (event.type === 'operation-resumed' && event.takenOver);
        if (isAlone) stop(work, at);
        running.set(work, [...(running.get(work) ?? []), spans.length]);
        spans.push({
          person: by,
          car: event.car,
          operation: event.operation,
          run: event.run,
          from: at,
          until: null,
        });
        break;
      }
      case 'operation-left':
        stop(work, at, by);
        break;
      case 'operation-paused':
      case 'operation-finished':
      case 'operation-due-again':
        stop(work, at);
        break;
      default:
    }
  }
  return spans;
};

/** Whole minutes that each person worked in these stretches, those that still run until `now`. */
export const minutesOf = (spans: Iterable<WorkSpan>, now: Instant): Readonly<Record<PersonId, number>> => {
  const milliseconds: Record<PersonId, number> = {};
  for (const { person, from, until } of spans)
    milliseconds[person] =
      (milliseconds[person] ?? 0) + Math.max(0, Date.parse(until ?? now) - Date.parse(from));
  return Object.fromEntries(
    Object.entries(milliseconds).map(([person, each]) => [person, Math.floor(each / 60_000)]),
  );
};
