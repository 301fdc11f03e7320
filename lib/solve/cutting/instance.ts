/**
 * Cutting as the solver sees it: widths that are packed into bins. A piece’s width holds the cut behind it, a bin’s
 * capacity is what the ends leave plus one cut, for the last piece needs none where it ends with the bar.
 */

/** All bins that are alike. `most` is always a number: none of a plan needs more bins than pieces. */
export interface BinKind {
  readonly capacity: number;
  readonly most: number;
}

/** Whole numbers throughout, below 2^31. Widths differ from each other and descend. */
export interface Instance {
  readonly widths: readonly number[];
  readonly demand: readonly number[];
  readonly kinds: readonly BinKind[];
}

/** What is cut from one bin: `counts[k]` pieces of width no. `items[k]`. */
export interface Pattern {
  readonly kind: number;
  readonly items: readonly number[];
  readonly counts: readonly number[];
}

/** What is to be cut now, and from how many bins of each kind. */
export interface Question {
  readonly demand: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  /** What may still be spent of each limit of the master. */
  readonly limits: readonly number[];
}

/** Equal patterns have equal keys. */
export const keyOf = ({ kind, items, counts }: Pattern): string =>
  `${String(kind)}:${items.join(',')}:${counts.join(',')}`;

/** A time after which nothing new is begun, in the clock of `performance.now()`. */
export type Deadline = number;
