/** What the pages of approved orders are made from. For leads and owners: there are prices in it. */

export interface PurchasesView {
  readonly says: string;
  readonly orders: readonly PurchaseSummary[];
}

export interface PurchaseSummary {
  readonly id: string;
  readonly supplier: string;
  /** `approved Wed 25 Nov, comes Fri 27 Nov`. */
  readonly says: string;
  /** `3 of 6 lines are to come`, `all there`. */
  readonly stand: string;
  readonly isOpen: boolean;
  readonly isLate: boolean;
  readonly total: string;
}

export interface PurchaseView extends PurchaseSummary {
  readonly ordered: string;
  readonly due: string;
  readonly dueDay: string;
  readonly goods: string;
  readonly freight: string;
  readonly approvedBy: string;
  readonly deliveries: readonly string[];
  readonly credits: readonly string[];
  /** What was paid on old parts, and what of it is still to come back; empty = nothing was. */
  readonly deposits: string;
  /** As a field holds it; empty = nothing is to come back. */
  readonly depositsOpen: string;
  readonly lines: readonly PurchaseLineView[];
  /** The order in words, for a letter. */
  readonly text: string;
  readonly mail: string | null;
  /** The next lot number. */
  readonly nextLot: number;
}

export interface PurchaseLineView {
  readonly item: string;
  readonly name: string;
  readonly unit: string;
  /** What the supplier calls it. */
  readonly number: string | null;
  readonly bin: string | null;
  /** `2 × 50`. */
  readonly packs: string;
  readonly price: string;
  readonly total: string;
  readonly ordered: string;
  readonly came: string;
  readonly left: string;
  /** Nothing is to come. */
  readonly isWhole: boolean;
  /** `2 damaged, 50 wrong`; `ended: the money comes back`. */
  readonly amiss: readonly string[];
  readonly lots: readonly string[];
  readonly isTraced: boolean;
  /** Its last lot had a certificate asked for. */
  readonly asksCertificate: boolean;
  /** It has a last day printed on it. */
  readonly goesOff: boolean;
  readonly cars: readonly {
    readonly chassis: string;
    readonly colour: string | null;
    readonly quantity: string;
  }[];
}
