/** What the page of the hardware demand is made from. Quantities are texts: exact where they end, else rounded for reading. */

export interface HardwareView {
  /** `What six cars still need and the shelf does not cover: 41 of 96 items.` */
  readonly says: string;
  readonly cars: readonly HardwareCar[];
  readonly items: readonly HardwareItem[];
  /** What the days rest on. */
  readonly basis: string;
  readonly counts: { readonly short: number; readonly all: number };
}

export interface HardwareCar {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
}

export interface HardwareItem {
  readonly key: string;
  readonly name: string;
  /** `in m`, `kit`; empty for what is counted one by one. */
  readonly unit: string;
  /** For each car of the view, in their order; empty where it needs none. */
  readonly perCar: readonly string[];
  /** Of which the shop never wants to have fewer; empty where it says nothing. */
  readonly minimum: string;
  /** Of all cars. */
  readonly need: string;
  /** Good, whoever gets it. */
  readonly shelf: string;
  /** How much of the need the shelf covers, 0 to 1. */
  readonly covered: number;
  /** Lies there, and does not count: quarantined or expired. */
  readonly held: string | null;
  /** Null: nothing is short. */
  readonly buy: string | null;
  /** The first day on which something is short. */
  readonly by: { readonly text: string; readonly isToday: boolean } | null;
  readonly reasons: readonly HardwareReason[];
  /** `4 from lot L-0801`. */
  readonly from: readonly string[];
  /** Choices that are still open and will need more of it. */
  readonly waitsFor: readonly string[];
}

export interface HardwareReason {
  readonly car: HardwareCar;
  readonly quantity: string;
  readonly place: string | null;
  readonly cause: string;
  readonly by: string | null;
}
