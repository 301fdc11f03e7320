/** What a car needs, line by line, each with its reason: plain data. `need-words.ts` says it. */
import type { Exact } from '@/lib/domain/base/exact';
import type { Grade } from '@/lib/domain/car/component-rows';
import type { CarId, Instant, Key, PersonId, StateKey } from '@/lib/domain/base/vocabulary';

export type NeedCause =
  /** The plan has it and it is not in yet. */
  | { readonly kind: 'planned' }
  /** It was spent, or may not go in again, when the joint was opened. */
  | { readonly kind: 'opened'; readonly at: Instant | null; readonly by: PersonId | null }
  /** The plan itself opens the joint again later, and spends it. */
  | { readonly kind: 'reopening'; readonly operation: StateKey }
  /** It is in and can't be believed: the joint must be opened and this renewed. */
  | { readonly kind: 'renew'; readonly because: string }
  /** Work that was finished is due once more. */
  | { readonly kind: 'again'; readonly operation: StateKey; readonly because: string; readonly share: Exact }
  /** Renewing another line's hardware makes that work due again (D57). */
  | {
      readonly kind: 'chained';
      readonly operation: StateKey;
      readonly joint: StateKey;
      readonly behind: Key;
      readonly share: Exact;
    }
  /** A part that was condemned, by this finding where it is known. */
  | { readonly kind: 'condemned'; readonly finding: string | null }
  /** The donor's was graded so that another is bought; `usual` is what the plan expects. */
  | { readonly kind: 'graded'; readonly grade: Grade; readonly usual: Grade | null }
  /** A part that was taken off for another car. */
  | { readonly kind: 'taken'; readonly takenFor: string }
  /** What gets lost of bulk goods, as a share of the rest. */
  | { readonly kind: 'attrition'; readonly share: Exact }
  /** Lies in the box of another item, so that it need not be bought: below zero. */
  | { readonly kind: 'in-box'; readonly of: Key };

export interface NeedLine {
  readonly car: CarId;
  /** A catalogue item, or a part of the plan that is bought as a whole. */
  readonly item: Key;
  readonly what: 'item' | 'part';
  /** Exact: half a pen, 6.41 m of line. */
  readonly quantity: Exact;
  readonly cause: NeedCause;
  /** The joint it goes into, else the work that uses it. */
  readonly at: StateKey;
  /** The work before which it must be there; null = now, since nothing planned stands before it. */
  readonly before: StateKey | null;
  /** Index of the stage by whose gate it is asked. */
  readonly due: number;
  /** Options that are not chosen yet on which it depends: it does not count before. */
  readonly undecided: readonly Key[];
}

/** Everything but the car, which its collector knows. */
export type CarlessLine = Omit<NeedLine, 'car'>;
