/**
 * Who is at work on what, now: a person has one running clock (design 6). It runs from starting, joining, resuming or
 * taking over until the work is paused, finished, they step out, or somebody else takes it over.
 */
import type { CarId, PersonId, StateKey } from './base/vocabulary';
import type { Car } from './car/rows';
import type { ClaimType } from './commands';

export interface Clock {
  readonly car: CarId;
  readonly operation: StateKey;
}

export type Clocks = Readonly<Record<PersonId, readonly Clock[]>>;

/** The commands that set the clock of whoever gives them going. */
export const STARTS_CLOCK: ReadonlySet<ClaimType> = new Set<ClaimType>([
  'start-operation',
  'join-operation',
  'resume-operation',
  'take-over-operation',
]);

/** The running clocks of everybody on these cars. More than one of a person: from before there was this rule. */
export const clocksOf = (cars: Iterable<Pick<Car, 'id' | 'operations'>>): Clocks => {
  const found: Record<PersonId, Clock[]> = {};
  for (const { id, operations } of cars)
    for (const operation in operations) {
      const row = operations[operation];
      if (row?.status !== 'running') continue;
      for (const person of row.present) (found[person] ??= []).push({ car: id, operation });
    }
  return found;
};
