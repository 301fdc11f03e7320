/** What happened to the shop's own books: people, tools, plans, lots. `events.ts` puts them beside what happens on cars. */
import type { CarId, Instant, Key, LotId, PersonId, Role, ToolId } from './base/vocabulary';
import type { CutPayload } from './cut-payload';
import type { PurchasePayload } from './purchase-payload';
import type { TripPayload } from './trip-payload';
import type { HourRate } from './shop/rates';
import type { Lot, Person, Qualification, QualificationEnd } from './shop/rows';
import type { DrawnOut, KeptOffDonor, Recount, StockPlace } from './shop/stock';
import type { SupplyPayload } from './supply-payload';
import type { Adapter, Calibration, SuspectInterval, Tool } from './torque/tool';

export type ShopPayload =
  | { readonly type: 'person-added'; readonly person: Person }
  | { readonly type: 'person-qualified'; readonly person: PersonId; readonly qualification: Qualification }
  | ({ readonly type: 'qualification-ended' } & QualificationEnd)
  | {
      readonly type: 'person-renamed';
      readonly person: PersonId;
      readonly name: string;
      readonly was: string;
    }
  | {
      readonly type: 'roles-changed';
      readonly person: PersonId;
      readonly roles: readonly Role[];
      readonly was: readonly Role[];
    }
  | { readonly type: 'person-removed'; readonly person: PersonId }
  | { readonly type: 'tool-added'; readonly tool: Tool }
  | { readonly type: 'adapter-added'; readonly adapter: Adapter }
  | { readonly type: 'tool-calibrated'; readonly tool: ToolId; readonly calibration: Calibration }
  | { readonly type: 'tool-suspected'; readonly tool: ToolId; readonly interval: SuspectInterval }
  /** Open suspicions end here, with the error that the bench found. */
  | {
      readonly type: 'tool-tested';
      readonly tool: ToolId;
      readonly until: Instant;
      readonly low: string;
      readonly high: string;
    }
  | {
      readonly type: 'plan-released';
      readonly plan: string;
      readonly model: string;
      readonly revision: string;
    }
  | { readonly type: 'lot-received'; readonly lot: Lot }
  /** The lots are received by events of their own. */
  | {
      readonly type: 'donor-hardware-kept';
      readonly donorOf: CarId;
      readonly lines: readonly KeptOffDonor[];
    }
  | { readonly type: 'donor-lot-shared'; readonly lot: LotId; readonly donorOf: CarId }
  | { readonly type: 'lot-quarantined'; readonly lot: LotId; readonly reason: string }
  | { readonly type: 'lot-cleared'; readonly lot: LotId; readonly reason: string }
  /** `found`: what had gone beyond what came is booked as found, before the new goods. */
  | (StockPlace & { readonly type: 'stock-received'; readonly quantity: string; readonly found: string })
  | (StockPlace & { readonly type: 'stock-put-back'; readonly quantity: string; readonly found: string })
  | (StockPlace & DrawnOut & { readonly type: 'stock-drawn'; readonly quantity: string })
  | (Recount & { readonly type: 'stock-counted' })
  | (StockPlace & { readonly type: 'stock-put-away'; readonly bin: string })
  | { readonly type: 'remnants-counted'; readonly item: Key; readonly lengths: readonly string[] }
  | CutPayload
  | SupplyPayload
  | PurchasePayload
  | TripPayload
  | { readonly type: 'rate-set'; readonly rate: HourRate };
