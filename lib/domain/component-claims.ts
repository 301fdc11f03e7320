/** What a person may claim of components. A list is one act. */
import type { CarId, Key } from './base/vocabulary';
import type { Grade, Outcome } from './car/component-rows';

/** What is left out stays as it was; an empty text takes back what was said. */
export interface Graded {
  readonly part: Key;
  readonly grade?: Grade;
  readonly place?: string;
  readonly serial?: string;
  readonly note?: string;
}

export interface Sent {
  readonly part: Key;
  /** What is to be done there. */
  readonly work: string;
}

export interface CameBack {
  readonly part: Key;
  readonly how: Outcome;
  readonly note?: string;
}

/** Which vehicle the donor was. What is left out stays as it was; an empty text takes back what was said. */
export interface DonorTold {
  /** Four figures. */
  readonly year?: string;
  readonly model?: string;
  readonly number?: string;
  readonly mileage?: string;
  readonly from?: string;
  /** A day, `2026-03-02`. */
  readonly came?: string;
}

interface OfCar {
  readonly car: CarId;
}

export type RecordDonor = OfCar & DonorTold & { readonly type: 'record-donor' };

export type ComponentClaim =
  /** `photos`: of the one part that is graded by itself. */
  | (OfCar & {
      readonly type: 'grade-parts';
      readonly parts: readonly Graded[];
      readonly photos?: readonly string[];
    })
  | (OfCar & { readonly type: 'send-parts'; readonly trip: string; readonly parts: readonly Sent[] })
  | (OfCar & { readonly type: 'return-parts'; readonly trip: string; readonly parts: readonly CameBack[] });

/** A part is here and good: its own again, off another car, or bought. */
export interface ReceivePart extends OfCar {
  readonly type: 'receive-part';
  readonly part: Key;
  /** The car that gave it. */
  readonly from?: CarId;
  readonly serial?: string;
  /** What was looked at, of one that was out. */
  readonly looked?: string;
  /** Off the shelf, as this item and lot. */
  readonly item?: Key;
  readonly lot?: string;
}
