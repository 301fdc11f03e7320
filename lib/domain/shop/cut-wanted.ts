/** What work on a car wants cut. */
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key, StateKey } from '@/lib/domain/base/vocabulary';

/** Pieces that are alike, for one piece of work on one car. Lengths are in millimetres. */
export interface CutWanted {
  readonly car: CarId;
  readonly operation: StateKey;
  /** The run that takes them. */
  readonly run: number;
  readonly item: Key;
  readonly piece: string;
  readonly length: Exact;
  readonly count: number;
}
