/** What work outside is expected to cost before it is billed, as rows: the plan names days and no price. */
import type { Key, StateKey } from '@/lib/domain/base/vocabulary';
import type { PlanDocument } from '@/lib/domain/plan/document';

export interface OutsideQuote {
  readonly id: string;
  /** The plan's name: a quote is for every car that is built by it, whatever its revision. */
  readonly plan: string;
  /** The part that goes, or the work that is done elsewhere. */
  readonly key: Key;
  /** Of one, in the smallest unit of money. */
  readonly money: number;
}

/** A part or a piece of work that the plan sends away; `money` null = nobody has said what it will cost. */
export interface PlannedOutside {
  readonly key: StateKey;
  readonly stage: number | null;
  readonly money: number | null;
}

export type OutsideQuotes = Readonly<Record<string, OutsideQuote>>;

export const quoteId = (plan: string, key: Key): string => `${plan}/${key}`;

/** Is that work which the plan sends to another firm? */
export const isOutside = ({ operations, parts }: PlanDocument, key: Key): boolean =>
  (operations?.[key] ?? parts?.[key])?.outside !== undefined;
