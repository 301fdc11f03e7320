/** What happened to orders. What came makes lots or stock by events of their own. */
import type { Day, LotId } from './base/vocabulary';
import type { EndReason, PurchaseOrder } from './shop/purchase-rows';

export type PurchasePayload =
  | { readonly type: 'order-approved'; readonly order: PurchaseOrder }
  | {
      readonly type: 'order-received';
      readonly order: string;
      readonly supplier: string;
      readonly note: string | null;
      readonly lines: readonly {
        readonly line: number;
        readonly good: string;
        readonly damaged: string;
        readonly wrong: string;
        readonly lot: LotId | null;
      }[];
    }
  | {
      readonly type: 'order-promised';
      readonly order: string;
      readonly supplier: string;
      readonly due: Day;
      readonly was: Day;
    }
  | {
      readonly type: 'order-line-ended';
      readonly order: string;
      readonly supplier: string;
      readonly line: number;
      readonly item: string;
      /** What had not come. */
      readonly quantity: string;
      readonly why: EndReason;
    }
  | {
      readonly type: 'order-credited';
      readonly order: string;
      readonly supplier: string;
      readonly money: number;
      readonly why: string;
      readonly isDeposit?: true;
    };
