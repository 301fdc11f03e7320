/** Trips to who does outside work, as rows. What goes along is said on each car's own stream (`car.components`). */
import type { CarId, Day, Instant, PersonId, StateKey } from '@/lib/domain/base/vocabulary';

/** What they did for one car cost, in the smallest unit of money. */
export interface BilledPart {
  readonly car: CarId;
  /** A part that went along, or work of the plan that was done there on the car itself. */
  readonly part: StateKey;
  readonly money: number;
}

/** One bill of theirs; what comes later is another. */
export interface TripBill {
  readonly lines: readonly BilledPart[];
  /** The way there and back. */
  readonly freight: number;
  /** Their number for it. */
  readonly note: string | null;
  readonly by: PersonId;
  readonly at: Instant;
}

export interface TripRow {
  /** A number; numbers are never used again. */
  readonly id: string;
  readonly supplier: string;
  readonly goes: Day;
  /** When it is promised back. */
  readonly due: Day;
  readonly bills: readonly TripBill[];
  readonly by: PersonId;
  readonly at: Instant;
}

/** May something still go along? Until the day on which it is promised back. */
export const takesMore = ({ due }: Pick<TripRow, 'due'>, today: Day): boolean => today <= due;

export const nextTrip = (trips: Readonly<Record<string, TripRow>>): string =>
  String(Object.keys(trips).reduce((most, id) => Math.max(most, Number(id)), 0) + 1);
