/** What the page of the week's order is made from. It holds prices: for leads and owners only. */
import type { ClaimOf } from '@/lib/domain/commands';
import type { HardwareCar } from './hardware';

export interface OrderView {
  /** `One order for six cars: 72 lines from 3 suppliers.` */
  readonly says: string;
  /** Null: there is nothing to buy, or nobody to buy from. */
  readonly order: SolvedOrder | null;
  readonly hasSuppliers: boolean;
  /** Nobody offers it. */
  readonly unoffered: readonly Unoffered[];
  readonly pins: readonly PinView[];
  /** Approved, and not all there yet. */
  readonly sent: readonly SentOrder[];
  /** What can wait for a later order. */
  readonly later: readonly LaterView[];
  /** What the days rest on. */
  readonly basis: string;
}

export interface SolvedOrder {
  readonly total: string;
  readonly goods: string;
  readonly freight: string;
  readonly sheets: readonly OrderSheetView[];
  readonly proof: Proof;
  readonly late: readonly LateView[];
  readonly approval: Approval;
}

/** What approving says, as the page shows it. */
export type Approval = Omit<ClaimOf<'approve-order'>, 'type'>;

/** An order that is on its way. */
export interface SentOrder {
  readonly id: string;
  readonly supplier: string;
  /** `comes Fri 27 Nov`. */
  readonly says: string;
  readonly isLate: boolean;
  readonly total: string;
}

export interface Proof {
  readonly isProved: boolean;
  readonly cost: string;
  readonly bound: string;
  readonly gap: string;
  readonly lateCarDays: number;
  readonly fewestLate: number;
  readonly offers: number;
  readonly lines: number;
  readonly seconds: string;
}

export interface LateView {
  readonly item: string;
  /** `by 25 Nov, comes Fri 27 Nov, 2 days late`. */
  readonly says: string;
  readonly cars: readonly HardwareCar[];
}

export interface LaterView {
  readonly key: string;
  readonly item: string;
  readonly quantity: string;
  /** `needed by 18 Dec, order by Wed 9 Dec`. */
  readonly says: string;
  readonly cars: readonly HardwareCar[];
}

export interface OrderSheetView {
  readonly key: string;
  readonly name: string;
  readonly ordered: string;
  readonly arrives: string;
  readonly goods: string;
  /** `freight £6.50`, `freight free`. */
  readonly freight: string;
  readonly total: string;
  /** What is paid beside it and comes back for old parts; empty = nothing. */
  readonly deposits: string;
  readonly lines: readonly OrderLineView[];
}

export interface OrderLineView {
  readonly item: string;
  readonly name: string;
  readonly unit: string;
  /** `In place of …: the plan’s condition`; null where it is what was asked for. */
  readonly instead: string | null;
  /** In a few words. */
  readonly why: string;
  readonly reasons: readonly string[];
  readonly need: string;
  readonly by: string | null;
  /** `order by Wed 2 Dec`: the last day for the earliest need; null = too late for it, or no day asks. */
  readonly orderBy: string | null;
  readonly isLate: boolean;
  readonly packs: readonly PacksView[];
  /** What the same would cost by one pack alone. */
  readonly others: readonly PacksView[];
  readonly cars: readonly { readonly car: HardwareCar; readonly quantity: string }[];
  readonly shelf: string | null;
  readonly spare: string;
  readonly cost: string;
  readonly pin: PinChoice | null;
  readonly sellers: readonly { readonly id: string; readonly name: string; readonly takesToday: boolean }[];
}

export interface PacksView {
  /** `1 × 50`. */
  readonly says: string;
  readonly cost: string;
  /** Where it is another supplier’s. */
  readonly supplier: string | null;
}

export interface PinChoice {
  readonly supplier: string | null;
  readonly quantity: string | null;
  readonly buyToday: boolean;
  readonly isExcluded: boolean;
}

export interface PinView {
  readonly item: string;
  readonly name: string;
  readonly unit: string;
  /** `from Thornby Fixings, 60, today`. */
  readonly says: string;
  /** `costs £2.10 more`; null where it is not known. */
  readonly cost: string | null;
  readonly pin: PinChoice;
  readonly sellers: OrderLineView['sellers'];
}

export interface Unoffered {
  readonly item: string;
  readonly name: string;
  readonly quantity: string;
  readonly by: string | null;
  readonly cars: readonly HardwareCar[];
}
