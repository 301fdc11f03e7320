/** What a person may claim of a kit: the box in which one run of one operation is gathered. A list is one act. */
import type { CarId, Key, StateKey } from './base/vocabulary';
import type { KitFault } from './car/kit-rows';
import type { OfStock } from './stock-claims';

interface OfKit {
  readonly car: CarId;
  readonly operation: StateKey;
  readonly run?: number;
}

export type KitLine = OfStock & { readonly quantity: string };

export type KitClaim =
  /** Put in the box, to what is there. `emptied`: items whose bin gave no more than that; of these nothing is left in it. */
  | (OfKit & {
      readonly type: 'pick-kit';
      readonly lines: readonly KitLine[];
      readonly emptied?: readonly Key[];
    })
  /** Back to the shelf: these lines, or all of them. */
  | (OfKit & { readonly type: 'empty-kit'; readonly lines?: readonly KitLine[] })
  /** What is wrong or missing leaves the box, what is damaged is scrapped. Without a quantity: all of it that lies in the box. */
  | (OfKit &
      OfStock & { readonly type: 'report-kit-line'; readonly what: KitFault; readonly quantity?: string });
