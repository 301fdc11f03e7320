/** What a person may claim at the saw. Lengths carry their unit; a list is one act: all of it is taken, or none. */
import type { CarId, Key } from './base/vocabulary';

/** Pieces that are alike, for one car; for which of its work, the rules find. */
export interface ClaimedPiece {
  readonly car: CarId;
  readonly piece: string;
  readonly length: string;
  readonly count: number;
}

export interface ClaimedBar {
  /** A rest from the rack, or a new length. */
  readonly from: 'rest' | 'new';
  readonly length: string;
  readonly pieces: readonly ClaimedPiece[];
  /** What goes into the rack, as measured; empty = nothing. Absent = as it is reckoned, if that is worth keeping. */
  readonly left?: string;
}

export type CutClaim =
  | { readonly type: 'saw-bars'; readonly item: Key; readonly bars: readonly ClaimedBar[] }
  /** Sawn pieces are spoiled, or were never sawn: they are wanted again. The rack stays as it is. */
  | { readonly type: 'recut-pieces'; readonly item: Key; readonly pieces: readonly ClaimedPiece[] };

/** Those that are judged by what cars still want cut. */
export const isCutClaim = <Claim extends { readonly type: string }>(
  claim: Claim,
): claim is Claim & CutClaim => claim.type === 'saw-bars' || claim.type === 'recut-pieces';

/** The cars that a claim names, each once. */
export const carsOfCut = (claim: CutClaim): readonly CarId[] => {
  const pieces = claim.type === 'saw-bars' ? claim.bars.flatMap((bar) => bar.pieces) : claim.pieces;
  return [...new Set(pieces.map(({ car }) => car))].sort();
};
