/** What the page of a donor is given: which vehicle it was, each part as it is expected and as it was found, its hardware. */
import type { Grade } from '@/lib/domain/car/component-rows';
import type { PhotoRef } from './photo';

export interface DonorPartLine {
  readonly key: string;
  readonly name: string;
  readonly isCritical: boolean;
  readonly lookedAt: string;
  /** What the plan expects; null = it does not say. */
  readonly usual: Grade | null;
  readonly grade: Grade | null;
  readonly place: string;
  readonly serial: string;
  readonly note: string;
  /** Where it stands, if its grade alone does not say it: fitted, out, taken. */
  readonly stands: string;
  /** A grade may still be given. */
  readonly isOpen: boolean;
  /** Graded reuse, and the plan asks for a look before it counts as here. */
  readonly waitsForLook: boolean;
  readonly photos: readonly PhotoRef[];
}

export interface DonorNeed {
  readonly key: string;
  readonly name: string;
  readonly says: string;
  /** The plan did not expect it. */
  readonly isUnusual: boolean;
}

/** As typed: what a form begins with. Empty = nobody has said. */
export interface DonorTexts {
  readonly year: string;
  readonly model: string;
  readonly number: string;
  readonly mileage: string;
  readonly from: string;
  readonly came: string;
}

export interface DonorVehicle {
  readonly told: DonorTexts;
  /** `from a dealer in parts, came Fri 20 Feb`. */
  readonly whence: string;
  /** What is odd about its number; it stands all the same. */
  readonly doubts: readonly string[];
  /** `Maud Ellery, 3 Nov 09:12`. */
  readonly recorded: string;
}

/** A lot that came off this donor. */
export interface DonorLot {
  readonly lot: string;
  readonly item: string;
  readonly name: string;
  /** `4 of 6 left in 04A, 2 thrown away`. */
  readonly says: string;
  readonly isShared: boolean;
  /** Why it may not be used; empty = it may. */
  readonly keptApart: string;
}

/** What of this car's plan may be used again. */
export interface DonorItem {
  readonly key: string;
  readonly name: string;
  /** How many the car still needs, beyond what was put aside; empty = none. */
  readonly needed: string;
}

export interface DonorView {
  readonly car: { readonly id: string; readonly chassis: string; readonly colour: string | null };
  /** Who looks at it; a lead or an owner also says which vehicle it was, and shares its hardware. */
  readonly me: { readonly id: string; readonly isLead: boolean };
  readonly says: string;
  readonly vehicle: DonorVehicle;
  readonly parts: readonly DonorPartLine[];
  readonly hardware: { readonly lots: readonly DonorLot[]; readonly items: readonly DonorItem[] };
  readonly need: readonly DonorNeed[];
  /** What was graded so that it goes out, and has not been. */
  readonly toSend: readonly { readonly key: string; readonly name: string; readonly days: string }[];
  readonly findings: readonly { readonly id: string; readonly text: string; readonly href: string }[];
}
