/** What the cutting page is made from. Places on a bar are shares of its scale, 0 to 1; lengths are texts, in millimetres. */

import type { ClaimedBar, ClaimedPiece } from '@/lib/domain/cut-claims';

export interface CutCar {
  readonly id: string;
  readonly chassis: string;
  readonly colour: string | null;
}

/** A car that still has something to cut, and whether it is in this plan. */
export interface CutCarChoice extends CutCar {
  readonly isIn: boolean;
}

export interface CutMark {
  readonly mark: string;
  readonly part: string;
  /** Of the work that takes it. */
  readonly codes: readonly string[];
  readonly length: string;
  readonly count: number;
  readonly cars: readonly { readonly car: CutCar; readonly count: number }[];
}

export interface CutItem {
  readonly key: string;
  readonly name: string;
  /** `kerf 3 mm, 10 mm off each end, rests kept from 300 mm`. */
  readonly terms: string;
  readonly marks: readonly CutMark[];
  /** What is in no drawing, and why. */
  readonly notes: readonly string[];
  readonly rack: CutRack;
}

/** Rests of one item, as they were counted and the saw has left them. */
export interface CutRack {
  /** In millimetres, as they are typed again. */
  readonly lengths: string;
  readonly says: string;
}

export interface CutVerdict {
  /** No plan has fewer new lengths. */
  readonly isProved: boolean;
  readonly says: string;
  readonly why: string;
}

export interface DrawnPiece {
  readonly mark: string;
  readonly length: string;
  readonly colour: string | null;
  readonly from: number;
  readonly to: number;
}

export interface DrawnBar {
  /** `length 1`, `remnant 2`. */
  readonly name: string;
  readonly length: string;
  /** Of the longest bar. */
  readonly to: number;
  readonly pieces: readonly DrawnPiece[];
  /** Cut away: ends, and a rest that is not worth keeping. */
  readonly off: readonly { readonly from: number; readonly to: number }[];
  readonly keep: { readonly from: number; readonly to: number; readonly length: string } | null;
  /** The whole bar in words, from left to right. */
  readonly says: string;
  /** What of it is for which car. */
  readonly cars: readonly { readonly car: CutCar; readonly marks: string }[];
  /** What is claimed when it is sawn as it is drawn. */
  readonly sawing: ClaimedBar;
}

/** Pieces that are sawn and not built in. */
export interface CutSawn {
  readonly key: string;
  readonly name: string;
  readonly part: string;
  readonly codes: readonly string[];
  readonly car: CutCar;
  readonly length: string;
  readonly count: number;
  /** Who sawed last, and when. */
  readonly by: string;
  /** All of them, as they are claimed to be cut again. */
  readonly again: { readonly item: string; readonly piece: ClaimedPiece };
}

export interface CutDrawing {
  readonly verdict: CutVerdict;
  /** Empty where no plan was found. */
  readonly bars: readonly DrawnBar[];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}
