/** The box of one run of an operation: what was picked for it and has not gone into the car yet. It is still the shop's. */
import type { Instant, Key, LotId, PersonId } from '@/lib/domain/base/vocabulary';

/** So much of what came from one place: as stock's events say it. */
interface Boxed {
  readonly item: Key;
  readonly lot: LotId | null;
  readonly quantity: string;
}

/** What was amiss with a line when somebody wanted to pick it, or found it in the box. */
export const KIT_FAULTS = ['wrong', 'damaged', 'missing'] as const;
export type KitFault = (typeof KIT_FAULTS)[number];

export interface KitReport {
  readonly item: Key;
  readonly what: KitFault;
  readonly by: PersonId;
  readonly at: Instant;
}

/** By the operation's key. A row without lines and reports is dropped. */
export interface KitRow {
  readonly run: number;
  /** One for each place that it came from, in the order of their keys. */
  readonly lines: readonly Boxed[];
  /** The last word on an item, until it is picked again. */
  readonly reports: readonly KitReport[];
  /** Who put something in last. */
  readonly by: PersonId;
  readonly at: Instant;
}
