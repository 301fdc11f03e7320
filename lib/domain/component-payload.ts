/** What happened to components. */
import type { CarId, Day, Key } from './base/vocabulary';
import type { DonorFacts } from './car/donor-identity';
import type { Grade, Outcome } from './car/component-rows';
import type { PartRow } from './car/rows';
import type { Drawn } from './shop/stock';

/** All that is known of the donor from then on. */
export type DonorRecorded = { readonly type: 'donor-recorded' } & DonorFacts;

export type ComponentPayload =
  | {
      readonly type: 'part-graded';
      readonly part: Key;
      readonly piece: number;
      readonly grade: Grade | null;
      readonly place: string | null;
      readonly serial: string | null;
      readonly note: string | null;
      /** Whether it counts as here by that. */
      readonly state: PartRow['state'];
    }
  | {
      readonly type: 'part-sent';
      readonly part: Key;
      readonly piece: number;
      readonly trip: string;
      readonly work: string;
      readonly due: Day;
    }
  | {
      readonly type: 'part-returned';
      readonly part: Key;
      readonly trip: string;
      readonly how: Outcome;
      readonly note: string | null;
    }
  | {
      readonly type: 'part-received';
      readonly part: Key;
      readonly piece: number;
      /** Absent, this and the others: nothing of the kind was said. */
      readonly from?: CarId;
      readonly serial?: string;
      readonly looked?: string;
      /** The stock half: it came off the shelf. */
      readonly drawn?: readonly Drawn[];
    };
