/** What happened to a kit. What the shop has changes only where something is scrapped or a bin is down: a box is a place of the shop's. */
import type { Key, StateKey } from './base/vocabulary';
import type { KitFault } from './car/kit-rows';
import type { Drawn, Recount } from './shop/stock';

interface OfKit {
  readonly operation: StateKey;
  readonly run: number;
}

export type KitPayload =
  | (OfKit & {
      readonly type: 'kit-picked';
      readonly lines: readonly Drawn[];
      /** The stock half: places whose bin is down. Absent where nobody said so, as in logs from before it could be said. */
      readonly emptied?: readonly Recount[];
    })
  | (OfKit & { readonly type: 'kit-emptied'; readonly lines: readonly Drawn[] })
  | (OfKit & {
      readonly type: 'kit-line-reported';
      readonly item: Key;
      readonly what: KitFault;
      /** What left the box for it. */
      readonly lines: readonly Drawn[];
      /** The stock half: what was scrapped. */
      readonly drawn: readonly Drawn[];
    });
