/** Kits as the server says them: those to pick, and one of them line by line. No prices. */
import type { CarMark } from './my-work';
import type { DueMark } from './car';

export interface KitsView {
  readonly says: string;
  readonly kits: readonly KitHead[];
}

export interface KitHead {
  readonly href: string;
  readonly car: CarMark;
  /** `AX-080 Ball joints, left`. */
  readonly name: string;
  /** `for Bea; may begin`. */
  readonly says: string;
  /** `3 of 9 lines in the box`. */
  readonly picked: string;
  readonly isWhole: boolean;
  readonly due: DueMark;
  /** What neither box nor shelf has, and when it comes; empty where nothing is missing. */
  readonly lacks: string;
}

export interface KitView {
  readonly car: CarMark;
  readonly operation: string;
  readonly run: number;
  /** `AX-080, left`. */
  readonly key: string;
  /** `Ball joints; for Bea; today Fri 27 Nov`. */
  readonly says: string;
  readonly workHref: string;
  /** The work is done, or takes nothing. */
  readonly isOver: boolean;
  readonly lines: readonly KitPickLine[];
}

export interface KitPickLine {
  readonly item: string;
  readonly name: string;
  /** `m`, `g`; empty for what is counted one by one. */
  readonly unit: string;
  readonly bin: string | null;
  /** Exact, without its unit. */
  readonly wanted: string;
  /** Still to be put in the box. */
  readonly left: string;
  readonly inBox: string;
  /** In the box as many as are wanted. */
  readonly isPicked: boolean;
  /** What is more in the box than is wanted; empty where none is. */
  readonly over: string;
  /** `By bin, no lot.`, `Lot L-0941.` */
  readonly says: string;
  /** Where to take it from, first things first: as far as the books go. */
  readonly from: readonly KitSource[];
  /** `2 short: none on order.`; empty where the shelf has enough. */
  readonly lacks: string;
  /** When more of it comes, whatever lies there. */
  readonly coming: string;
  /** `wrong part, said Bea Fri 27 Nov 8:12`; empty where nothing was said. */
  readonly report: string;
}

export interface KitSource {
  readonly lot: string | null;
  readonly quantity: string;
}
