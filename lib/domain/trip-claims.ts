/** What a person may claim of trips to who does outside work. */
import type { Day } from './base/vocabulary';
import type { BilledPart } from './shop/trip-rows';

export type TripClaim =
  | {
      readonly type: 'open-trip';
      /** What it will be called: whoever saw that has seen every trip before it. */
      readonly trip: string;
      readonly supplier: string;
      readonly goes: Day;
      readonly due: Day;
    }
  | { readonly type: 'promise-trip'; readonly trip: string; readonly due: Day }
  | {
      readonly type: 'bill-trip';
      readonly trip: string;
      readonly lines: readonly BilledPart[];
      readonly freight?: number;
      readonly note?: string;
    };
