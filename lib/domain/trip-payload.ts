/** What happened to trips. */
import type { Day } from './base/vocabulary';
import type { BilledPart } from './shop/trip-rows';

interface OfTrip {
  readonly trip: string;
  readonly supplier: string;
}

export type TripPayload =
  | (OfTrip & { readonly type: 'trip-opened'; readonly goes: Day; readonly due: Day })
  | (OfTrip & { readonly type: 'trip-promised'; readonly due: Day; readonly was: Day })
  | (OfTrip & {
      readonly type: 'trip-billed';
      readonly lines: readonly BilledPart[];
      readonly freight: number;
      readonly note: string | null;
    });
