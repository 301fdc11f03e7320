/** Orders that were approved, as rows: frozen as they were sent, with what came of each line. */
import { ZERO, add, atLeastNone, compare, exact, multiply, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Day, Instant, Key, LotId, PersonId } from '@/lib/domain/base/vocabulary';
import { quantityOf } from './stock';
import type { Supply } from './supply';

/** For which car, and how much; null = for the shelf, or spare. Decimal text, in the item's unit. */
export interface MeantFor {
  readonly car: CarId | null;
  readonly quantity: string;
}

export const END_REASONS = ['cancelled', 'credited', 'sent-back'] as const;
export type EndReason = (typeof END_REASONS)[number];

export interface PurchaseLine {
  readonly offer: string;
  readonly item: Key;
  /** What the supplier calls it. */
  readonly number: string | null;
  readonly packs: number;
  /** Decimal text, in the item's unit. */
  readonly packSize: string;
  /** Of one pack, in the smallest unit of money. */
  readonly price: number;
  /** Paid on each pack until the old part is handed in. Absent = none. */
  readonly deposit?: number;
  readonly cars: readonly MeantFor[];
  /** What came so far, decimal text: good, and what could not be kept. */
  readonly good: string;
  readonly damaged: string;
  readonly wrong: string;
  readonly lots: readonly LotId[];
  /** What will not come any more. */
  readonly ended: { readonly why: EndReason; readonly at: Instant; readonly by: PersonId } | null;
}

export interface Delivery {
  /** The supplier's number on the delivery note. */
  readonly note: string | null;
  readonly at: Instant;
  readonly by: PersonId;
}

export interface Credit {
  readonly money: number;
  /** A deposit that came back for an old part; absent = another credit. */
  readonly isDeposit?: true;
  readonly why: string;
  readonly at: Instant;
  readonly by: PersonId;
}

export interface PurchaseOrder {
  readonly id: string;
  readonly supplier: string;
  readonly ordered: Day;
  /** When it is promised. */
  readonly due: Day;
  readonly goods: number;
  readonly freight: number;
  readonly approvedBy: PersonId;
  readonly approvedAt: Instant;
  readonly lines: readonly PurchaseLine[];
  readonly deliveries: readonly Delivery[];
  readonly credits: readonly Credit[];
}

export const orderedOf = ({ packs, packSize }: PurchaseLine): Exact =>
  multiply(exact(packs), quantityOf(packSize));

/** What is still to come; damaged and wrong goods are, until the line is ended. More than was ordered leaves nothing owed. */
export const outstandingOf = (line: PurchaseLine): Exact => {
  if (line.ended !== null) return ZERO;
  return atLeastNone(subtract(orderedOf(line), quantityOf(line.good)));
};

/** Deposits that were paid on it, and how much of them has not come back yet. */
export const depositsOf = ({
  lines,
  credits,
}: Pick<PurchaseOrder, 'lines' | 'credits'>): { readonly paid: number; readonly open: number } => {
  const paid = lines.reduce((sum, { packs, deposit = 0 }) => sum + packs * deposit, 0);
  const back = credits.reduce((sum, { money, isDeposit }) => sum + (isDeposit === true ? money : 0), 0);
  return { paid, open: Math.max(0, paid - back) };
};

export const isOpen = ({ lines }: PurchaseOrder): boolean =>
  lines.some((line) => compare(outstandingOf(line), ZERO) > 0);

/** The next number of an order: numbers are never used again. */
export const nextOrder = (orders: Readonly<Record<string, PurchaseOrder>>): number =>
  Object.keys(orders).reduce((most, id) => Math.max(most, Number(id)), 0) + 1;

const LOT = /^L-(\d+)$/u;

/** As it is written on the bag: `L-0942`. */
export const lotName = (number: number): LotId => `L-${String(number).padStart(4, '0')}`;

/** The number after those of the lots that are there. */
export const nextLotNumber = (lots: Readonly<Record<LotId, unknown>>): number =>
  Object.keys(lots).reduce((most, id) => Math.max(most, Number(LOT.exec(id)?.[1] ?? 0)), 0) + 1;

/** What is on its way, as supply: late goods are still coming. */
export const onOrder = (orders: Readonly<Record<string, PurchaseOrder>>): readonly Supply[] =>
  Object.values(orders).flatMap(({ id, due, lines }) =>
    lines.flatMap((line): readonly Supply[] => {
      const quantity = outstandingOf(line);
      return compare(quantity, ZERO) > 0
        ? [
            {
              item: line.item,
              quantity,
              source: { kind: 'order', order: id, due },
              goodUntil: null,
              onlyFor: null,
            },
          ]
        : [];
    }),
  );

/** More text of the same quantity kind: what came before and what came now. */
export const plus = (before: string, now: string): Exact => add(quantityOf(before), quantityOf(now));
