/** How an item is cut and which pieces are cut from it: the short texts of a plan about lengths, read into millimetres. */
import { ZERO, compare, exact, multiply, parseDecimal, parseInches, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { convert, parseUnit } from '@/lib/domain/base/units';
import type { CutEntry } from './document';

/** All in millimetres. */
export interface CutTerms {
  readonly lengths: readonly Exact[];
  readonly kerf: Exact;
  /** At each of the two ends. */
  readonly ends: Exact;
  readonly keep: Exact | null;
}

export interface PieceText {
  readonly count: number;
  /** In millimetres. */
  readonly length: Exact;
}

/** More of one piece for one car is a slip of the pen, and would fill the sheet. */
export const MOST_PIECES = 999;

const LENGTH = /^(\d[\d.,/ -]*?)\s*([a-z"″]+)$/iu;

/**
 * `6 m`, `3150 mm`, `1-1/8 in` in millimetres; null for anything else and for a number without a unit.
 *
 * @example parseLength('1/8 in') // 127/40
 */
export const parseLength = (text: string): Exact | null => {
  const [, number = '', name = ''] = LENGTH.exec(text.trim()) ?? [];
  const unit = parseUnit(name);
  if (unit === null) return null;
  const size = parseDecimal(number) ?? (unit === 'in' ? parseInches(number) : null);
  return size === null ? null : convert(size, unit, 'mm');
};

const PIECES = /^(?:(\d+)\s*[×xX*]\s*)?(.+)$/u;

/** `2 × 3150 mm`; one where no number stands before it. */
export const parsePieces = (text: string): PieceText | null => {
  const [, number = '1', rest = ''] = PIECES.exec(text.trim()) ?? [];
  const count = Number(number);
  const length = parseLength(rest);
  const isSound = count >= 1 && count <= MOST_PIECES && length !== null && compare(length, ZERO) > 0;
  return isSound ? { count, length } : null;
};

/** Null where one of its texts can't be read. */
export const readCut = ({ lengths, kerf, ends, keep }: CutEntry): CutTerms | null => {
  const stock = lengths.flatMap((text) => parseLength(text) ?? []);
  const terms = {
    lengths: stock,
    kerf: parseLength(kerf),
    ends: ends === undefined ? ZERO : parseLength(ends),
    keep: keep === undefined ? null : parseLength(keep),
  };
  const isRead = stock.length === lengths.length && (keep === undefined || terms.keep !== null);
  if (!isRead || terms.kerf === null || terms.ends === null) return null;
  return { ...terms, kerf: terms.kerf, ends: terms.ends };
};

/** What the longest length leaves between its ends. */
export const longestRoom = ({ lengths, ends }: CutTerms): Exact =>
  subtract(
    lengths.reduce((longest, each) => (compare(each, longest) > 0 ? each : longest), ZERO),
    multiply(ends, exact(2)),
  );
