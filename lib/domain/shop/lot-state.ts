/** What a lot is good for on a day, and where things lie. */
import { addDays } from '@/lib/domain/base/days';
import type { Day } from '@/lib/domain/base/vocabulary';
import type { Shelf } from './item';
import type { Lot } from './rows';

export type LotState =
  | { readonly state: 'good' }
  | { readonly state: 'quarantined'; readonly reason: string }
  | { readonly state: 'expired'; readonly last: Day };

/** A lot as the shop's rows have it; when its seal was broken, once that is kept. */
type KeptLot = Pick<Lot, 'expires' | 'quarantined'> & { readonly openedOn?: Day | null };

/** The last day on which it may be fitted: as printed, or so many days after it was opened, whichever is earlier. */
export const lastGoodDay = ({ expires, openedOn }: KeptLot, shelf: Shelf | null): Day | null => {
  const keeps = shelf?.openedDays ?? null;
  const opened =
    openedOn === undefined || openedOn === null || keeps === null ? null : addDays(openedOn, keeps);
  if (opened === null) return expires;
  return expires === null || opened < expires ? opened : expires;
};

/** Kept apart beats expired: whoever clears it must know why it was put there. */
export const lotState = (lot: KeptLot, shelf: Shelf | null, day: Day): LotState => {
  if (lot.quarantined !== null) return { state: 'quarantined', reason: lot.quarantined };
  const last = lastGoodDay(lot, shelf);
  return last !== null && day > last ? { state: 'expired', last } : { state: 'good' };
};

/**
 * A bin as it is called across the shop, number then letter (D54): `9c`, `09 C` are `09C`. Null for anything else.
 */
export const parseBin = (text: string): string | null => {
  const [, number, letter] = /^\s*(\d{1,2})[\s-]?([a-z])\s*$/iu.exec(text) ?? [];
  return number === undefined || letter === undefined || Number(number) === 0
    ? null
    : `${number.padStart(2, '0')}${letter.toUpperCase()}`;
};
