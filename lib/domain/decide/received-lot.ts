/** A lot as it comes in. Goods whose certificate was asked for and is missing are kept apart from the start (D58). */
import type { Day, Key, LotId } from '@/lib/domain/base/vocabulary';
import type { Facts } from '@/lib/domain/facts';
import type { Lot } from '@/lib/domain/shop/rows';

export interface LotClaim {
  readonly lot: LotId;
  readonly item: Key;
  readonly quantity: number;
  readonly certificate?: string | undefined;
  readonly certificateAsked?: boolean | undefined;
  readonly expires?: Day | undefined;
}

export const receivedLot = (facts: Facts, claim: LotClaim): Lot => {
  const isMissing = claim.certificateAsked === true && claim.certificate === undefined;
  return {
    id: claim.lot,
    item: claim.item,
    quantity: claim.quantity,
    certificate: claim.certificate ?? null,
    certificateAsked: claim.certificateAsked ?? false,
    expires: claim.expires ?? null,
    quarantined: isMissing ? 'certificate missing' : null,
    receivedAt: facts.judgedAt,
  };
};
