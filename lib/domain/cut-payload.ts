/** What happened at the saw. Stock by quantity does not change: what a piece of work uses up is drawn when it finishes. */
import type { Key } from './base/vocabulary';
import type { SawnPiece } from './shop/sawn';

export interface SawnBar {
  readonly from: 'rest' | 'new';
  readonly length: string;
  readonly pieces: readonly SawnPiece[];
  /** What went into the rack; null = nothing. */
  readonly left: string | null;
}

export type CutPayload =
  | { readonly type: 'bars-sawn'; readonly item: Key; readonly bars: readonly SawnBar[] }
  | { readonly type: 'pieces-recut'; readonly item: Key; readonly pieces: readonly SawnPiece[] };
