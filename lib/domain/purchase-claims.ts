/** What a person may claim of orders: approved as they were seen, received as they came, and what became of the rest. */
import type { Day, LotId } from './base/vocabulary';
import type { EndReason, MeantFor } from './shop/purchase-rows';

/** One line as the owner saw it: what changed since is refused. */
export interface ApprovedLine {
  readonly offer: string;
  readonly packs: number;
  /** Of one pack. */
  readonly price: number;
  readonly cars: readonly MeantFor[];
}

export interface ApprovedOrder {
  readonly supplier: string;
  readonly ordered: Day;
  readonly freight: number;
  readonly lines: readonly ApprovedLine[];
}

/** What came of one line, counted on the bench; what is left out is none. */
export interface CameIn {
  /** Its place in the order, from 0. */
  readonly line: number;
  readonly good: string;
  readonly damaged?: string;
  readonly wrong?: string;
  /** Written on the bag; else the next number. */
  readonly lot?: LotId;
  readonly certificate?: string;
  readonly certificateAsked?: boolean;
  readonly expires?: Day;
}

export type PurchaseClaim =
  | {
      readonly type: 'approve-order';
      /** What the first of them will be called: whoever saw that has seen every order before it. */
      readonly first: string;
      readonly orders: readonly ApprovedOrder[];
    }
  | {
      readonly type: 'receive-order';
      readonly order: string;
      readonly note?: string;
      readonly lines: readonly CameIn[];
    }
  | { readonly type: 'promise-order'; readonly order: string; readonly due: Day }
  | {
      readonly type: 'end-order-line';
      readonly order: string;
      /** Absent: every line of it that has not come whole. */
      readonly line?: number;
      readonly why: EndReason;
    }
  | {
      readonly type: 'credit-order';
      readonly order: string;
      readonly money: number;
      readonly why: string;
      /** It is a deposit, for an old part that was handed in. */
      readonly isDeposit?: boolean;
    };

const PURCHASES: ReadonlySet<string> = new Set<PurchaseClaim['type']>([
  'approve-order',
  'receive-order',
  'promise-order',
  'end-order-line',
  'credit-order',
]);

export const isPurchaseClaim = <Claim extends { readonly type: string }>(
  claim: Claim,
): claim is Claim & PurchaseClaim => PURCHASES.has(claim.type);
