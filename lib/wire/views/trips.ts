/** What the pages of trips are given. Money stands in `bills` only, which are null for who may not see it. */
import type { Outcome } from '@/lib/domain/car/component-rows';

interface CarOf {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
}

export interface TripHead {
  readonly id: string;
  readonly href: string;
  readonly name: string;
  readonly when: string;
  readonly says: string;
  readonly isOver: boolean;
  readonly isStop: boolean;
}

/** What may go out next, of one car. */
export interface WaitingCar {
  readonly car: CarOf;
  readonly parts: readonly {
    readonly key: string;
    readonly name: string;
    readonly work: string;
    readonly days: string;
  }[];
}

export interface TripSupplier {
  readonly id: string;
  readonly name: string;
  /** Their next day, and when it would be back. */
  readonly goes: string;
  readonly due: string;
}

export interface TripsView {
  readonly says: string;
  readonly trips: readonly TripHead[];
  readonly waiting: readonly WaitingCar[];
  /** Null: who looks may not plan one. */
  readonly plan: { readonly next: string; readonly suppliers: readonly TripSupplier[] } | null;
}

export interface TripPart {
  readonly key: string;
  readonly name: string;
  readonly work: string;
  readonly sent: string;
  readonly lookedAt: string;
  readonly stands: 'out' | 'back' | 'over';
  readonly how: Outcome | null;
  readonly says: string;
  readonly href: string;
}

export interface TripCar {
  readonly car: CarOf;
  readonly parts: readonly TripPart[];
}

export interface TripBillView {
  readonly says: string;
  readonly lines: readonly { readonly text: string; readonly money: string }[];
  readonly freight: string;
  readonly sum: string;
}

export interface TripView {
  readonly id: string;
  readonly supplier: string;
  readonly goes: string;
  readonly due: string;
  readonly dueDay: string;
  readonly goesDay: string;
  readonly isLate: boolean;
  readonly says: string;
  readonly cars: readonly TripCar[];
  /** What may still go along; empty once it is over. */
  readonly waiting: readonly WaitingCar[];
  /** Work on cars themselves that a bill may be for; empty for who may not enter one. */
  readonly works: readonly { readonly car: CarOf; readonly key: string; readonly name: string }[];
  readonly bills: readonly TripBillView[] | null;
}
