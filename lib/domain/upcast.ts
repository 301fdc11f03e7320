/**
 * Old events, read as today's. A log is kept for ever, so a shape that changes gets a new `v` and a step here that
 * turns the old one into it; `tests/domain/golden` holds one log of each release, which must still fold.
 */
import type { Event } from './events';

/** An event as a log holds it: of any version so far. */
export type StoredEvent = Event;

export const upcast = (stored: StoredEvent): Event => stored;
