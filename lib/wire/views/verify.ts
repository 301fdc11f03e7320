/** What waits for a second person, on all cars: what this one may verify, and what not and why. */
import type { RowSign } from './car';
import type { CarMark } from './my-work';
import type { PhotoRef } from './photo';

export interface VerifyView {
  /** `3 joints wait for your eyes, 2 of them hold a gate.` */
  readonly says: string;
  readonly mine: readonly VerifyCar[];
  readonly others: readonly VerifyCar[];
}

/** The car whose joint has waited longest stands first. */
export interface VerifyCar {
  readonly car: CarMark;
  readonly lines: readonly VerifyLine[];
}

export interface VerifyLine {
  readonly id: string;
  /** Its sign-off sheet. */
  readonly href: string;
  readonly sign: RowSign;
  readonly name: string;
  /** `re-apply 42 N·m`, `watch while it is done`. */
  readonly method: string;
  /** `on T-05`; who will look at it needs it. */
  readonly methodMore: string;
  readonly by: string;
  readonly byInitials: string;
  readonly when: string;
  /** `waiting 18 h`; empty where it is not there yet. */
  readonly waiting: string;
  /** `gate 6`, where it holds the gate before the car. */
  readonly gate: string | null;
  /** `wanted before LN-070 Tank in`. */
  readonly before: string | null;
  /** Why not, and who may; empty where this person may. */
  readonly whyNot: string;
  /** Of the joint, and of findings about it; absent where there are none. */
  readonly photos?: readonly PhotoRef[];
}
