/** What a person may claim of hardware that came off a donor. A list is one act: all of it is taken, or none. */
import type { CarId, Key, LotId } from './base/vocabulary';

/** Quantities are decimal text, in the item's own unit. */
export interface KeptLine {
  readonly item: Key;
  /** What may be used again; it is called by the lot from then on. */
  readonly good: string;
  /** The name of that lot; absent = the next free one. */
  readonly lot?: LotId;
  /** What was thrown away of it. */
  readonly scrapped?: string;
  readonly bin?: string;
}

export type DonorHardwareClaim =
  | { readonly type: 'keep-donor-hardware'; readonly donorOf: CarId; readonly lines: readonly KeptLine[] }
  /** From now on any car may have it. */
  | { readonly type: 'share-donor-lot'; readonly lot: LotId };

const CLAIMS: ReadonlySet<string> = new Set<DonorHardwareClaim['type']>([
  'keep-donor-hardware',
  'share-donor-lot',
]);

export const isDonorHardwareClaim = <Claim extends { readonly type: string }>(
  claim: Claim,
): claim is Claim & DonorHardwareClaim => CLAIMS.has(claim.type);
