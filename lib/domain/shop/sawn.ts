/** Pieces that are sawn and wait for their work, or have gone into it: what no cut list asks for once more. */
import { compare, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Instant, Key, PersonId, StateKey } from '@/lib/domain/base/vocabulary';
import { parseLength } from '@/lib/domain/plan/cut';
import type { CutWanted } from './cut-wanted';

/** Alike, for one run of one piece of work. */
export interface SawnPiece {
  readonly car: CarId;
  readonly operation: StateKey;
  readonly run: number;
  readonly piece: string;
  /** In millimetres, with the unit. */
  readonly length: string;
  readonly count: number;
}

/** A bar as it was sawn. */
export interface SawnBar {
  readonly from: 'rest' | 'new';
  readonly length: string;
  readonly pieces: readonly SawnPiece[];
  /** What went into the rack; null = nothing. */
  readonly left: string | null;
}

/** All of them that were sawn, less those that are cut again. */
export interface SawnRow extends SawnPiece {
  readonly id: string;
  readonly item: Key;
  /** Who sawed last. */
  readonly by: PersonId;
  readonly at: Instant;
}

export const sawnId = (item: Key, piece: Omit<SawnPiece, 'count'>): string =>
  [item, piece.car, piece.operation, String(piece.run), piece.piece, piece.length].join('|');

/** `3150 mm`: as events and rows keep a length. */
export const lengthText = (length: Exact): string => `${toDecimalText(length)} mm`;

export const isLength = (text: string, length: Exact): boolean => {
  const read = parseLength(text);
  return read !== null && compare(read, length) === 0;
};

export type SawnRows = Readonly<Record<string, SawnRow>>;

/** The row that counts these. */
export const sawnKeyOf = (wanted: Omit<CutWanted, 'count'>): string =>
  sawnId(wanted.item, { ...wanted, length: lengthText(wanted.length) });

/** How many of these are sawn. */
export const sawnOf = (sawn: SawnRows, wanted: Omit<CutWanted, 'count'>): number =>
  sawn[sawnKeyOf(wanted)]?.count ?? 0;

/** What is still to be sawn of what cars want. */
export const stillToSaw = (wanted: readonly CutWanted[], sawn: SawnRows): readonly CutWanted[] =>
  wanted.flatMap((each) => {
    const count = each.count - sawnOf(sawn, each);
    return count > 0 ? [{ ...each, count }] : [];
  });
