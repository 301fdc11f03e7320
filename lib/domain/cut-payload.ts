/** What happened at the saw. Stock by quantity does not change: what a piece of work uses up is drawn when it finishes. */
import type { Key } from './base/vocabulary';
import type { SawnBar, SawnPiece } from './shop/sawn';

export type CutPayload =
  | { readonly type: 'bars-sawn'; readonly item: Key; readonly bars: readonly SawnBar[] }
  | { readonly type: 'pieces-recut'; readonly item: Key; readonly pieces: readonly SawnPiece[] };
