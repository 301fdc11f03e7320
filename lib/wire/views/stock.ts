/** What the pages of the stock are made from. Quantities are texts for reading. */
import type { RowSign } from './car';

export interface StockView {
  /** `4 of 212 places want a look.` */
  readonly says: string;
  readonly lines: readonly StockLine[];
  readonly counts: { readonly look: number; readonly all: number };
}

/** One lot, or what of an item is counted by bin. */
export interface StockPlaceView {
  readonly item: string;
  readonly name: string;
  /** `m`, `kit`; empty for what is counted one by one. */
  readonly unit: string;
  readonly lot: string | null;
  readonly bin: string | null;
  /** What the books have. */
  readonly had: string;
  /** How much of it lies in the boxes of kits and not in the bin; empty where none does. */
  readonly inKits: string;
}

export interface StockLine extends StockPlaceView {
  /** `in 9 Nov`; empty for bulk. */
  readonly came: string;
  /** It lies there and may be fitted. */
  readonly isGood: boolean;
  readonly state: StockState;
}

export interface StockState {
  readonly sign: RowSign;
  readonly text: string;
  /** Somebody should look, count or decide. */
  readonly wantsLook: boolean;
  /** It may not be used. */
  readonly isStop: boolean;
}

export interface ItemView {
  readonly item: string;
  readonly name: string;
  readonly bin: string | null;
  readonly says: string;
  readonly places: readonly StockLine[];
}

export interface LotView extends StockLine {
  /** How many came in, and what is known of them. */
  readonly received: string;
  readonly facts: readonly string[];
  readonly quarantined: { readonly reason: string; readonly by: string; readonly when: string } | null;
  /** In joints now and used up by work, by car. */
  readonly cars: readonly LotCar[];
  /** What went otherwise: lost, scrapped, sent back, and what was renewed since. */
  readonly gone: readonly { readonly quantity: string; readonly what: string; readonly detail: string }[];
  readonly joints: { readonly count: number; readonly inDoubt: number };
  /** Who may clear it, and why the others may not. */
  readonly signers: readonly { readonly id: string; readonly name: string; readonly whyNot?: string }[];
}

export interface LotCar {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
  readonly isDelivered: boolean;
  readonly quantity: string;
  readonly joints: readonly LotJoint[];
  /** Work that used it up. */
  readonly work: readonly {
    readonly operation: string;
    readonly name: string;
    readonly href: string;
    readonly quantity: string;
  }[];
}

export interface LotJoint {
  readonly joint: string;
  readonly name: string;
  readonly href: string;
  readonly quantity: string;
  /** `at no. 1, 3`; empty where it serves the joint as a whole. */
  readonly at: string;
  readonly level: 'open' | 'snug' | 'final' | 'verified';
  readonly inDoubt: boolean;
}
